using System.Collections.Immutable;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Sweeps;
using SweepStats.Trends;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class SpecimenBiasesTests
{
    private static readonly SpecimenName First = new("1", "a");
    private static readonly SpecimenName Second = new("1", "b");
    private static readonly Hertz Here = new(100e6);
    private static readonly Hertz There = new(200e6);

    [Fact]
    public void DoubtsOfOneSpecimenAddUp()
    {
        var biases = new SpecimenBiases(First, [
            Doubt("all") with { Bias = new Bias(1, 0.5) },
            Doubt("own") with { Bias = new Bias(2, 0), Specimen = First },
            Doubt("other") with { Bias = new Bias(16, 16), Specimen = Second },
            Doubt("placed") with { Biases = [new(First, Here, new Bias(4, 0)), new(Second, Here, new Bias(32, 0))] },
            Doubt("there") with { Bias = new Bias(8, 0), Where = [new FrequencyBand(There, There)] },
        ]);
        Assert.Equal(new Bias(7, 0.5), biases.SumAt(Here));
        Assert.Equal(new Bias(11, 0.5), biases.SumAt(There));
        Assert.Equal(["all", "own", "placed"], biases.At(Here).Select(b => b.Code));
    }

    [Fact]
    public void AFaultThatDoesNotSayHowFarItReachesReachesAnywhere() =>
        Assert.Equal(Bias.Unknown, new SpecimenBiases(First, [Doubt("fault") with { Severity = Severity.Fault }]).SumAt(Here));

    [Fact]
    public void WhatIsSaidOfALotHoldsForItsSpecimensOnly()
    {
        ImmutableArray<Finding> findings = [Doubt("lot") with { Bias = new Bias(3, 0), Lot = "1" }];
        Assert.Equal(new Bias(3, 0), new SpecimenBiases(First, findings).SumAt(Here));
        Assert.True(new SpecimenBiases(new("2", "a"), findings).None);
        Assert.True(new SpecimenBiases(null, findings).None);
        Assert.Equal(new Bias(3, 0), new FrequencyBias(findings).At(Here).Farthest);
    }

    // Two doubts of 1 dB that a specimen has both, and one of 1.5 dB of another: a line through both may be off by 2 dB, not by
    // 1.5 or 3.5.
    [Fact]
    public void ATrendReckonsWithTheFarthestSpecimen()
    {
        (Bias farthest, ImmutableArray<string> codes) = new FrequencyBias([
            Doubt("all") with { Bias = new Bias(1, 0) },
            Doubt("own") with { Bias = new Bias(1, 0), Specimen = First },
            Doubt("placed") with { Biases = [new(Second, Here, new Bias(0.5, 3))] },
        ]).At(Here);
        Assert.Equal(new Bias(2, 3), farthest);
        Assert.Equal(new[] { "all", "own", "placed" }, codes.AsEnumerable());
    }

    private static Finding Doubt(string code) =>
        new() { Code = code, Severity = Severity.Warning, Message = "", Basis = "", NextStep = "" };
}
