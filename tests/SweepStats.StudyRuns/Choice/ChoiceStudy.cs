using System.Collections.Immutable;
using SweepStats.Choice;
using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.StudyRuns.Choice;

/// <summary>What was said of the truly best specimen.</summary>
/// <param name="Cell">The set-up.</param>
/// <param name="Held">Campaigns whose first group holds the specimen best over the compared part.</param>
/// <param name="HeldWhole">Those whose first group holds the specimen best over the whole band.</param>
/// <param name="Named">Those in which the highest plain mean of readings is that of the best over the compared part.</param>
/// <param name="MedianSize">Specimens in the first group, median.</param>
/// <param name="Alone">Campaigns in which one specimen alone is left.</param>
/// <param name="ComparedShare">Frequencies compared, of all.</param>
public sealed record ChoiceRow(ChoiceCell Cell, Tally Held, Tally HeldWhole, Tally Named, double MedianSize, Tally Alone,
    double ComparedShare);

/// <summary>Ranks specimens whose truth is known.</summary>
public static class ChoiceStudy
{
    /// <summary>Draws campaigns and counts.</summary>
    /// <param name="cell">The set-up.</param>
    /// <param name="campaigns">How many; those without a frequency to compare at are left out.</param>
    /// <param name="seed">Of the first campaign.</param>
    public static ChoiceRow Run(ChoiceCell cell, int campaigns, ulong seed)
    {
        var all = new ChoiceTrial?[campaigns];
        Parallel.For(0, campaigns, i => all[i] = ChoiceTrial.Of(cell, seed + (ulong)i));
        ChoiceTrial[] trials = [.. all.OfType<ChoiceTrial>()];
        return new ChoiceRow(
            cell,
            Tally.Over(trials.Select(t => (bool?)t.First.Contains(t.Best))),
            Tally.Over(trials.Select(t => (bool?)t.First.Contains(t.BestOverWhole))),
            Tally.Over(trials.Select(t => (bool?)(t.HighestPlain == t.Best))),
            trials.Length == 0 ? double.NaN : Sample.Median([.. trials.Select(t => (double)t.First.Length)]),
            Tally.Over(trials.Select(t => (bool?)(t.First.Length == 1))),
            trials.Average(t => (double)t.Compared / ChoiceCell.Points));
    }

    /// <summary>Edges of the classes of probability that <see cref="Calibrated"/> sorts by.</summary>
    public static ImmutableArray<double> Edges { get; } = [0, 0.02, 0.1, 0.2, 0.4, 0.6, 0.8, 0.9, 0.98, 1.0000001];

    /// <summary>
    /// How often candidates that were given a probability are truly the best: mean probability and count, one a class.
    /// </summary>
    public static ImmutableArray<(double Stated, Tally Best)> Calibrated(ChoiceCell cell, int campaigns, ulong seed)
    {
        var all = new ChoiceTrial?[campaigns];
        Parallel.For(0, campaigns, i => all[i] = ChoiceTrial.Of(cell, seed + (ulong)i));
        (double Chance, bool Best)[] stated =
            [.. all.OfType<ChoiceTrial>().SelectMany(t => t.Chances.Select(c => (c.Chance, c.Name == t.Best)))];
        return
        [
            .. from edge in Edges.Zip(Edges.Skip(1))
               let own = stated.Where(s => s.Chance >= edge.First && s.Chance < edge.Second).ToArray()
               select (own.Length == 0 ? double.NaN : own.Average(s => s.Chance), Tally.Over(own.Select(s => (bool?)s.Best))),
        ];
    }
}

/// <summary>One campaign ranked, beside its truth.</summary>
internal sealed record ChoiceTrial(
    SpecimenName Best, SpecimenName BestOverWhole, SpecimenName HighestPlain, ImmutableArray<SpecimenName> First,
    ImmutableArray<StatedChance> Chances, int Compared)
{
    // More than half of the readings capped: the specimen does not narrow the compared part for the others.
    private const double MostCapped = 0.5;

    /// <summary>Draws one campaign and ranks it over the whole band; null where no frequency is compared.</summary>
    public static ChoiceTrial? Of(ChoiceCell cell, ulong seed)
    {
        (Campaign campaign, ImmutableArray<TrueShielding> truth) = cell.Draw(seed);
        var read = ReadCampaign.Of(campaign, cell.Stated, []);
        BandRanking ranking =
            SpecimenRanker.Of(read.Aligned, read.Curves, [], new(new(), [], Confidence.NinetyFive, seed))!.Bands[0];
        int[] compared = ComparedAt(read.Curves);
        return ranking.GroupCount == 0 ? null : new ChoiceTrial(
            BestBy(truth, t => compared.Average(f => t.ShieldingDb[f])),
            BestBy(truth, t => t.ShieldingDb.Average()),
            read.Curves.MaxBy(c => c.Readings.Average(r => r.Evidence.ReferenceDb - r.Evidence.CoveredDb))!.Name,
            [.. ranking.Ranking.Where(r => r.Group == 1).Select(r => r.Name)],
            [.. ranking.Ranking.Where(r => r.ProbabilityBest is { } p && p.Low == p.High)
                .Select(r => new StatedChance(r.Name, r.ProbabilityBest!.Value.Low))],
            compared.Length);
    }

    private static SpecimenName BestBy(ImmutableArray<TrueShielding> truth, Func<TrueShielding, double> mean) =>
        truth.MaxBy(mean)!.Name;

    // Weights at the two ends of the band are halved in the ranking; which frequencies it compares is told by their states.
    private static int[] ComparedAt(ImmutableArray<ShieldingCurve> curves)
    {
        static bool Bound(ShieldingReading reading) => reading is not (ShieldingReading.Measured or ShieldingReading.Unrepeated);
        ShieldingCurve[] narrowing = [.. curves.Where(c => c.Readings.Count(Bound) <= MostCapped * c.Readings.Length)];
        return [.. Enumerable.Range(0, curves[0].Readings.Length).Where(f => !narrowing.Any(c => Bound(c.Readings[f])))];
    }
}
