using SweepStats.Bands;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Lots;

/// <summary>The specimens of one campaign read at the frequencies of several, and the errors that they share.</summary>
internal sealed class CampaignSpecimens
{
    private readonly CampaignLots _of;
    private readonly FrequencyGrid _at;
    private readonly ImmutableArray<SpecimenSweeps> _specimens;
    private readonly ImmutableArray<ShieldingCurve> _curves;

    /// <summary>Reads the specimens of all lots at the frequencies, along log frequency between two of their own.</summary>
    public CampaignSpecimens(CampaignLots of, FrequencyGrid at)
    {
        (_of, _at) = (of, at);
        (_curves, _specimens) = LotMembers.Of(
            new(of.Curves, [.. of.Campaign.Covered.Zip(of.Curves, SpecimenSweeps.Of)]), of.Yardstick);
        Values = [.. _specimens.Select(s => Read(f => s.Values[f]))];
        Bounds = [.. _specimens.Select(s => Read(f => s.Bounds[f] ? 1 : 0).Select(b => b > 0).ToArray())];
    }

    /// <summary>Label of the campaign.</summary>
    public string Label => _of.Label;

    /// <summary>Shielding of each specimen at each frequency in dB, or a bound.</summary>
    public double[][] Values { get; }

    /// <summary>Where it is a bound.</summary>
    public bool[][] Bounds { get; }

    /// <summary>Each specimen with its weighted mean in dB, its lot labelled by the campaign.</summary>
    public IEnumerable<TimedSpecimen> Specimens(double[] weights) => _specimens.Select((s, i) =>
        new TimedSpecimen(HistoryLot.Labelled(_of.Label, s.Name.Lot), s.Name.Specimen, s.TakenAt,
            LogWeights.Mean(weights, f => Values[i][f])));

    /// <summary>Lots as they come, with the means of their specimens and the plain means of their readings.</summary>
    /// <param name="weights">Of the part of the band that is compared.</param>
    /// <param name="all">Of the whole band.</param>
    public IEnumerable<LotMeans> Lots(double[] weights, double[] all) => _specimens
        .Select((s, i) => (s.Name.Lot, Mean: LogWeights.Mean(weights, f => Values[i][f]),
            Plain: MeanOf(all, f => _curves[i].Readings.PlainDb(f))))
        .GroupBy(s => s.Lot)
        .Select(g => new LotMeans(g.Key, [.. g.Select(s => s.Mean)], g.Average(s => s.Plain)));

    /// <summary>Errors that all specimens of the campaign have in common; null where the reference does not repeat.</summary>
    public Contribution[]? Shared(double[] weights) => SharedErrors.Of(_curves, own => MeanOf(weights, own));

    /// <summary>Lots in the same order, frequency by frequency.</summary>
    public IEnumerable<LotOverFrequency> OverFrequency() =>
        Enumerable.Range(0, _specimens.Length).GroupBy(i => _specimens[i].Name.Lot)
        .Select(lot => LotOverFrequency.Of([.. lot.Select(i => Values[i])], [.. lot.Select(i => Bounds[i])],
            SharedAt([.. lot.Select(i => _curves[i])])));

    // The floor moves each lot by what its own specimens lie over it; a frequency is a band of one.
    private Contribution[]?[] SharedAt(ShieldingCurve[] curves) =>
        [.. Enumerable.Range(0, _at.Count).Select(f => SharedErrors.Of(curves, own => Read(own, f)))];

    private double MeanOf(double[] weights, Func<int, double> own) => LogWeights.Mean(weights, f => Read(own, f));

    private double[] Read(Func<int, double> own) => [.. Enumerable.Range(0, _at.Count).Select(f => Read(own, f))];

    // Between two frequencies along their logarithm; at a frequency of its own as it is. What is not known on either side is not
    // known between.
    private double Read(Func<int, double> own, int f)
    {
        FrequencyGrid grid = _of.Campaign.Grid;
        int near = grid.NearestPoint(_at[f]);
        double apart = _at.Hertz[f] - grid.Hertz[near];
        int other = apart < 0 ? Math.Max(0, near - 1) : apart > 0 ? Math.Min(grid.Count - 1, near + 1) : near;
        double part = other == near || grid.Hertz[Math.Min(near, other)] == 0 ? 0
            : Math.Log(_at.Hertz[f] / grid.Hertz[near]) / Math.Log(grid.Hertz[other] / grid.Hertz[near]);
        return part == 0 ? own(near) : ((1 - part) * own(near)) + (part * own(other));
    }
}
