using System.Collections.Immutable;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.StudyRuns.Choice;

/// <summary>A kind of campaign among whose specimens one is to be chosen. The reference stands 70 dB over the noise.</summary>
/// <param name="Name">What is special about it.</param>
/// <param name="Candidates">Specimens.</param>
/// <param name="Placements">Placements of each; 0 leaves them unnamed.</param>
/// <param name="SpreadDb">
/// Standard deviation between specimens in dB; 0 makes all alike, and the first of them counts as the best.
/// </param>
public sealed record ChoiceCell(string Name, int Candidates, int Placements, double SpreadDb)
{
    /// <summary>Points of a sweep.</summary>
    public const int Points = 21;

    /// <summary>Standard deviation between placements in dB.</summary>
    public double PlacementDb { get; init; } = 0.5;

    /// <summary>How many times as much the truly best one differs from placement to placement.</summary>
    public double BestScatters { get; init; } = 1;

    /// <summary>Sweeps of a placement, or of a specimen.</summary>
    public int Sweeps { get; init; } = 2;

    /// <summary>Shielding at the start of the band in dB, before specimens differ.</summary>
    public double StartDb { get; init; } = 40;

    /// <summary>The same at the stop.</summary>
    public double StopDb { get; init; } = 40;

    /// <summary>Standard deviation in dB by which specimens differ in the upper half of the band besides.</summary>
    public double UpperHalfDb { get; init; }

    /// <summary>What the analysis is told of the averaging; power averages are drawn.</summary>
    public Averaging Stated { get; init; } = Averaging.Power;

    /// <summary>Draws the campaign of a seed.</summary>
    internal (Campaign Campaign, ImmutableArray<TrueShielding> Truth) Draw(ulong seed)
    {
        RehearsalPlan plan = Plan(seed);
        RehearsedCampaign drawn = Rehearser.Draw(plan);
        if (BestScatters == 1)
        {
            return (drawn.Campaign, drawn.Truth);
        }

        // The same draws on another scale, for the best specimen only.
        SpecimenName best = drawn.Truth.MaxBy(t => t.ShieldingDb.Average())!.Name;
        Campaign other = Rehearser.Draw(plan with { PlacementDeviationDb = PlacementDb * BestScatters }).Campaign;
        return (drawn.Campaign with
        {
            Sweeps =
                [.. drawn.Campaign.Sweeps.Zip(other.Sweeps,
                    (own, scaled) => own.Lot == best.Lot && own.Specimen == best.Specimen ? scaled : own)],
        }, drawn.Truth);
    }

    // A specimen that differs in half of the band has a lot of its own.
    private RehearsalPlan Plan(ulong seed) => new()
    {
        Seed = seed,
        Points = Points,
        Lots = UpperHalfDb > 0 ? Candidates : 1,
        SpecimensPerLot = UpperHalfDb > 0 ? 1 : Candidates,
        SpecimenDeviationDb = SpreadDb,
        LotSteps = UpperHalfDb > 0 ? [.. Steps(new RandomSource(seed).Fork(77_000))] : [],
        Placements = Placements,
        PlacementDeviationDb = PlacementDb,
        SweepDeviationDb = 0.2,
        CoveredSweeps = Sweeps,
        ReferenceDbm = -30,
        FloorDbm = -100,
        ShieldingStartDb = StartDb,
        ShieldingStopDb = StopDb,
    };

    private IEnumerable<LotStep> Steps(RandomSource random) => Enumerable.Range(0, Candidates).Select(i => new LotStep(
        Rehearser.LotName(i), new Decibels(UpperHalfDb * random.Normal()),
        new FrequencyBand(new Hertz(Math.Sqrt(30e6 * 1e9)), new Hertz(1e9))));

    /// <summary>The set-ups.</summary>
    public static ImmutableArray<ChoiceCell> Cells { get; } =
    [
        .. from candidates in new[] { 2, 3, 9, 25 } from placements in new[] { 2, 3, 5 } from spread in new[] { 0, 1.0 }
            select new ChoiceCell("", candidates, placements, spread),
        .. from spread in new[] { 0.3, 3 } select new ChoiceCell("", 9, 3, spread),
        .. Special(),
    ];

    private static IEnumerable<ChoiceCell> Special()
    {
        yield return new("placed once, nothing lost by it", 9, 0, 1) { Sweeps = 5, PlacementDb = 0 };
        yield return new("placed once, nothing lost by it", 9, 0, 0) { Sweeps = 5, PlacementDb = 0 };
        yield return new("placed once, and it matters", 9, 0, 1) { Sweeps = 5 };
        foreach (double times in new[] { 2, 3 })
        {
            yield return new($"the best one scatters {times} times as much", 9, 3, 0) { BestScatters = times };
            yield return new($"the best one scatters {times} times as much", 25, 3, 0) { BestScatters = times };
            yield return new($"the best one scatters {times} times as much", 9, 3, 1) { BestScatters = times };
        }

        foreach (ChoiceCell capped in Capped())
        {
            yield return capped;
        }

        yield return new("5 dB over the noise", 9, 3, 0) { StartDb = 65, StopDb = 65 };
        yield return new("5 dB over the noise", 9, 3, 1) { StartDb = 65, StopDb = 65 };
        yield return new("5 dB over the noise, averaging unknown", 9, 3, 1)
        {
            StartDb = 65,
            StopDb = 65,
            Stated = Averaging.Unknown,
        };
        yield return new("averaging unknown", 9, 3, 1) { Stated = Averaging.Unknown };
    }

    private static ChoiceCell[] Capped() =>
    [
        new("capped over the upper third", 9, 3, 1) { StartDb = 52, StopDb = 82 },
        new("capped over the upper third, others are better there", 9, 3, 1) { StartDb = 52, StopDb = 82, UpperHalfDb = 1 },
        new("others are better in the upper half", 9, 3, 1) { UpperHalfDb = 1 },
        new("some capped nearly everywhere", 9, 3, 3) { StartDb = 70, StopDb = 70 },
    ];
}
