using SweepStats.Quantities;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Verdicts;

public sealed class FrequencyDecisionsTests
{
    private static readonly FrequencyDecision?[] Given =
    [
        new(new Hertz(30e6), new Decibels(20), RequirementOutcome.Meets, new ConformanceProbability(0.999, 1)),
        null,
        new(new Hertz(31e6), new Decibels(30.125), RequirementOutcome.Undecided, ConformanceProbability.Of(0.875)),
        new(new Hertz(32e6), new Decibels(20), RequirementOutcome.Fails, new ConformanceProbability(0, 0.001)),
        new(new Hertz(33e6), new Decibels(20), RequirementOutcome.CannotTell, null) { OverturnedBy = "drift" },
    ];

    [Fact]
    public void EveryDecisionComesOutAsItWentIn()
    {
        FrequencyDecisions kept = [.. Given];

        Assert.Equal(Given, kept);
        Assert.Equal(4, kept.Asked);
        Assert.All(Enum.GetValues<RequirementOutcome>(), outcome => Assert.Equal(1, kept.Counted(outcome)));
        Assert.Equal(["drift"], kept.OverturnedBy);
    }

    [Fact]
    public void WhatMeetsIsNotReliedOnAndTheRestStays()
    {
        FrequencyDecision?[] expected =
            [Given[0]! with { Outcome = RequirementOutcome.CannotTell, Probability = null }, .. Given[1..]];

        FrequencyDecisions relied = FrequencyDecisions.Of(Given).WithoutMeeting();

        Assert.Equal(expected, relied);
        Assert.Equal(0, relied.Counted(RequirementOutcome.Meets));
        Assert.Equal(2, relied.Counted(RequirementOutcome.CannotTell));
    }
}
