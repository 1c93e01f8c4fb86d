using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Linearity;

/// <summary>Sweeps with nothing in the way that were taken at one level of the source.</summary>
/// <param name="Dbm">Level of the source in dBm.</param>
/// <param name="Sweeps">Levels of each sweep in dB, one a frequency.</param>
/// <param name="IsReference">They are reference sweeps.</param>
internal sealed record SourceLevel(double Dbm, ImmutableArray<double[]> Sweeps, bool IsReference)
{
    private readonly double[] _means = Means(Sweeps);

    /// <summary>Mean level at a frequency.</summary>
    public double MeanAt(int f) => _means[f];

    /// <summary>
    /// Mean square over some frequencies of the standard error of the mean in dB²; 0 where one sweep shows none.
    /// </summary>
    public double ErrorSquare(IReadOnlyCollection<int> places) => Sweeps.Length < 2 || places.Count == 0 ? 0
        : places.Average(f => Math.Pow(Sample.StandardDeviation([.. Sweeps.Select(s => s[f])]), 2)) / Sweeps.Length;

    /// <summary>
    /// The levels at which linearity and reference sweeps were taken, rising; where both were taken at one level, linearity comes
    /// first.
    /// </summary>
    /// <remarks>
    /// A linearity sweep counts where it states its level, a reference sweep at its own or else at that of the campaign. The two
    /// stay apart even at one level: linearity sweeps follow each other closely, and reference sweeps may have been taken hours
    /// later.
    /// </remarks>
    /// <param name="campaign">The sweeps.</param>
    /// <param name="campaignDbm">Source level stated for the whole campaign in dBm; null where none is.</param>
    public static ImmutableArray<SourceLevel> Of(AlignedCampaign campaign, double? campaignDbm)
    {
        SourceLevel[] all = [.. Linearity(campaign).Concat(Reference(campaign.Reference, campaignDbm)).OrderBy(level => level.Dbm)
            .ThenBy(level => level.IsReference)];
        return campaign.Scale == LevelScale.DecibelRatio && all.Length > 0 && StaysPut(all)
            ? [.. all.Select(level => level.Received((all.FirstOrDefault(l => l.IsReference) ?? all[^1]).Dbm))] : [.. all];
    }

    // A display in dB may be no ratio: it then moves by about the step.
    private static bool StaysPut(SourceLevel[] levels)
    {
        double Mean(SourceLevel level) => Sample.Mean([.. Enumerable.Range(0, level.Sweeps[0].Length).Select(level.MeanAt)]);
        return Mean(levels[^1]) - Mean(levels[0]) < (levels[^1].Dbm - levels[0].Dbm) / 2;
    }

    // A ratio stays where the source is stepped. With the step added it is what arrives, against what arrives at the reference's
    // level of the source.
    private SourceLevel Received(double referenceDbm) =>
        new(Dbm, [.. Sweeps.Select(s => (double[])[.. s.Select(db => db + Dbm - referenceDbm)])], IsReference);

    private static IEnumerable<SourceLevel> Linearity(AlignedCampaign campaign) =>
        SetAsideSweeps.OnGrid(campaign, SweepRole.Linearity)
        .Where(s => s.Sweep.SourceDbm is not null)
        .GroupBy(s => s.Sweep.SourceDbm!.Value)
        .Select(g => new SourceLevel(g.Key, [.. g.Select(s => s.Levels.ToArray())], IsReference: false));

    // Reference sweeps of several levels are no repeats of each other; the highest of them is the likeliest to overload.
    private static IEnumerable<SourceLevel> Reference(SweepBlock block, double? campaignDbm) =>
        Enumerable.Range(0, block.SweepCount)
        .Where(j => ReferenceSource.Of(block.Sweeps[j], campaignDbm) is not null)
        .GroupBy(j => ReferenceSource.Of(block.Sweeps[j], campaignDbm)!.Value)
        .OrderByDescending(g => g.Key).Take(1)
        .Select(g => new SourceLevel(g.Key, [.. g.Select(j => block[j].ToArray())], IsReference: true));

    private static double[] Means(ImmutableArray<double[]> sweeps) =>
        [.. Enumerable.Range(0, sweeps[0].Length).Select(f => sweeps.Average(s => s[f]))];
}
