using System.Collections.Immutable;
using SweepStats.Checks;
using SweepStats.Fields;
using SweepStats.Quantities;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Fields;

/// <summary>
/// What is left of a field behind a specimen: E·10^(−SE/20) from the limit that holds at every frequency at once, or nothing.
/// </summary>
public sealed class ResidualFieldTests
{
    private static readonly FieldThreat Threat = new(50e3, 5e3);

    private static readonly AnalysisResult Usual =
        Rehearsed.Analysed(Rehearsed.Plan, new AnalysisPlan { Averaging = Averaging.Power, Field = Threat });

    [Fact]
    public void ItIsTheFieldInFrontLessTheLimitThatHoldsEverywhere()
    {
        ResidualField field = Assert.Single(Usual.Fields);
        double limit = Usual.Bands[0].AtLeast!.Value.Value;
        Assert.Equal(limit, field.Shielding!.Value.Value, 12);
        Assert.Equal(50e3 / Math.Pow(10, limit / 20), field.VoltsPerMetre!.Value, 9);
        // A true shielding of 40 dB leaves a hundredth: 500 V/m, by hand. The limit leaves more.
        Assert.InRange(field.VoltsPerMetre.Value, 500, 560);
        Assert.True(field.IsTolerable);
        Assert.Null(field.Silence);
    }

    [Theory]
    [InlineData(20, 5000)]
    [InlineData(60, 50)]
    public void TwentyDecibelsAreATenthOfTheField(double shielding, double left) =>
        Assert.Equal(left, Assert.Single(Fields([], Trust.Limited, shielding - Lowest)).VoltsPerMetre!.Value, 9);

    [Fact]
    public void WhatIsNotStatedIsNotAnswered()
    {
        Assert.Empty(Rehearsed.Analysed(Rehearsed.Plan).Fields);
        Assert.Null(ResidualField.Of(new FieldThreat(1, null), new CurvesAndBands(Usual.Curves, Usual.Bands), [],
            Trust.Limited)[0].IsTolerable);
        Assert.False(ResidualField.Of(new FieldThreat(50e3, 400), new CurvesAndBands(Usual.Curves, Usual.Bands), [],
            Trust.Limited)[0].IsTolerable);
    }

    [Fact]
    public void WhereNothingMayBeReliedOnNothingIsClaimed() =>
    Silent(FieldSilence.Untrustworthy, Fields([], Trust.Untrustworthy));

    [Fact]
    public void WithoutAClaimAtEveryFrequencyNothingIsClaimed()
    {
        AnalysisResult single =
            Rehearsed.Analysed(Rehearsed.Plan with { ReferenceSweeps = 1, CoveredSweeps = 1, FloorSweeps = 3 },
                new AnalysisPlan { Averaging = Averaging.Power, Field = Threat });
        Assert.Null(single.Bands[0].AtLeast);
        Silent(FieldSilence.NoClaim, single.Fields);
    }

    [Fact]
    public void NoShieldingAtAllIsNoClaim() => Silent(FieldSilence.NothingKeptOut, Fields([], Trust.Limited, -Lowest));

    [Fact]
    public void WhatAFindingMayTakeOffIsTakenOff()
    {
        Finding finding = new()
        {
            Code = "drift",
            Severity = Severity.Warning,
            Message = "m",
            Basis = "b",
            NextStep = "n",
            Bias = new Bias(2, 0),
        };
        double plain = Fields([], Trust.Limited)[0].VoltsPerMetre!.Value;
        Assert.Equal(plain * Math.Pow(10, 0.1), Fields([finding], Trust.Limited)[0].VoltsPerMetre!.Value, 6);
        Assert.Equal(plain * Math.Pow(10, 0.2), Fields([finding, finding], Trust.Limited)[0].VoltsPerMetre!.Value, 6);
        Assert.Equal(plain, Fields([finding with { Bias = new Bias(0, 9) }], Trust.Limited)[0].VoltsPerMetre!.Value, 9);
        Assert.Equal(plain,
            Fields([finding with { Specimen = new SpecimenName("other", "one") }], Trust.Limited)[0].VoltsPerMetre!.Value, 9);
        Silent(FieldSilence.FindingOfUnknownSize, Fields([finding with { Bias = Bias.Unknown }], Trust.Limited));
        Hertz at = Usual.Bands[0].WeakestAt!.Value;
        Finding placed = finding with { Bias = null, Biases = [new PlacedBias(Usual.Bands[0].Name, at, new Bias(3, 0))] };
        Assert.Equal(plain * Math.Pow(10, 0.15), Fields([placed], Trust.Limited)[0].VoltsPerMetre!.Value, 6);
    }

    // The same shielding, all limits moved by so many dB: a law of the formula, without another campaign.
    private static ImmutableArray<ResidualField> Fields(ImmutableArray<Finding> findings, Trust trust, double shift = 0)
    {
        FieldThreat threat = shift == 0 ? Threat : Threat with { VoltsPerMetre = 50e3 };
        Finding moved = new()
        {
            Code = "shift",
            Severity = Severity.Note,
            Message = "m",
            Basis = "b",
            NextStep = "n",
            Bias = new Bias(-shift, 0),
        };
        return ResidualField.Of(threat, new CurvesAndBands(Usual.Curves, Usual.Bands),
            shift == 0 ? findings : [.. findings, moved], trust);
    }

    private static double Lowest => Usual.Bands[0].AtLeast!.Value.Value;

    private static void Silent(FieldSilence why, ImmutableArray<ResidualField> fields)
    {
        ResidualField field = Assert.Single(fields);
        Assert.Equal((null, why, null, null), (field.VoltsPerMetre, field.Silence!.Value, field.Shielding, field.IsTolerable));
    }
}
