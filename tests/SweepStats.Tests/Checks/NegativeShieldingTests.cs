using SweepStats.Checks;
using SweepStats.Rehearsal;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class NegativeShieldingTests
{
    // Twenty sweeps of 0.05 dB of scatter tell hundredths of a dB.
    private static readonly RehearsalPlan Fine =
        Rehearsed.Plan with { ScatterDb = 0.05, ReferenceSweeps = 20, CoveredSweeps = 20, Looks = 1000 };

    [Theory]
    [InlineData(0.06, null)]
    [InlineData(0.3, Severity.Note)]
    [InlineData(0.8, Severity.Warning)]
    [InlineData(2.7, Severity.Warning)]
    [InlineData(3.4, Severity.Fault)]
    [InlineData(40, Severity.Fault)]
    public void HowMuchIsMissingDecidesHowMuchItWeighs(double missing, Severity? severity)
    {
        Finding[] found = Found(Fine with { ShieldingStartDb = -missing, ShieldingStopDb = -missing });
        Assert.Equal(severity, found.Length == 0 ? null : Assert.Single(found).Severity);
    }

    // Along a straight line: beyond −3 dB at five of twelve parts of the band, and at five of eight.
    [Theory]
    [InlineData(4, -8, Severity.Warning)]
    [InlineData(0, -8, Severity.Fault)]
    public void TwiceThePowerOverMostOfTheBandIsAFault(double start, double stop, Severity severity) =>
        Assert.Equal(severity, Found(Fine with { ShieldingStartDb = start, ShieldingStopDb = stop })[0].Severity);

    [Fact]
    public void SlightAndMaterialShortfallsAreNamedApart()
    {
        // From 0 to −1 dB over the band: a note up to half of it, a warning from there on.
        Finding[] found = Found(Fine with { ShieldingStartDb = 0, ShieldingStopDb = -1 });
        Assert.Equal([Severity.Warning, Severity.Note], found.Select(f => f.Severity));
        Assert.InRange(found[0].Size!.Value.Value, -1.1, -0.95);
        Assert.InRange(found[1].Size!.Value.Value, -0.5, -0.4);
        Assert.Equal(1e9, found[0].Where[^1].Stop.Value, 1e6);
    }

    [Fact]
    public void AShortfallWithinTheScatterIsNone() =>
        Assert.Empty(Found(Rehearsed.Plan with
        {
            ScatterDb = 2,
            ReferenceSweeps = 3,
            CoveredSweeps = 3,
            ShieldingStartDb = -0.6,
            ShieldingStopDb = -0.6,
        }));

    // A single sweep has no scatter that could explain anything.
    [Theory]
    [InlineData(1, "more than the 2 dB that are granted to single sweeps")]
    [InlineData(5, "beyond what scatter explains")]
    public void TheReasonIsOfWhatTheSweepsShow(int sweeps, string reason)
    {
        Finding found =
            Found(Rehearsed.Plan with
            {
                ReferenceSweeps = sweeps,
                CoveredSweeps = sweeps,
                ShieldingStartDb = -4,
                ShieldingStopDb = -4,
            })[0];
        Assert.Contains(reason, found.Message, StringComparison.Ordinal);
    }

    private static Finding[] Found(RehearsalPlan plan) =>
        [.. Rehearsed.Analysed(plan).Findings.Where(f => f.Code == "negative-shielding")];
}
