using SweepStats.Bands;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Lots;

/// <summary>The specimens of one campaign read at the frequencies of several, and the errors that they share.</summary>
internal sealed class CampaignPieces
{
    private readonly CampaignLots _of;
    private readonly FrequencyGrid _at;
    private readonly SpecimenSweeps[] _specimens;

    public CampaignPieces(CampaignLots of, FrequencyGrid at)
    {
        (_of, _at) = (of, at);
        _specimens = [.. of.Campaign.Covered.Zip(of.Curves, SpecimenSweeps.Of)];
        Values = [.. _specimens.Select(s => Read(f => s.Values[f]))];
        Bounds = [.. _specimens.Select(s => Read(f => s.Bounds[f] ? 1 : 0).Select(b => b > 0).ToArray())];
    }

    /// <summary>Shielding of each specimen at each frequency in dB, or a bound.</summary>
    public double[][] Values { get; }

    /// <summary>Where it is a bound.</summary>
    public bool[][] Bounds { get; }

    public IEnumerable<TimedPiece> Pieces(double[] weights) => _specimens.Select((s, i) =>
        new TimedPiece(HistoryLot.Labelled(_of.Label, s.Name.Lot), s.Name.Specimen, s.TakenAt, LogWeights.Mean(weights, f => Values[i][f])));

    /// <summary>Lots as they come, with the means of their specimens and the plain means of their readings.</summary>
    public IEnumerable<(string Lot, double[] Means, double PlainMean)> Lots(double[] weights) => _specimens
        .Select((s, i) => (s.Name.Lot, Mean: LogWeights.Mean(weights, f => Values[i][f]), Plain: PlainMean(i)))
        .GroupBy(s => s.Lot)
        .Select(g => (g.Key, g.Select(s => s.Mean).ToArray(), g.Average(s => s.Plain)));

    /// <summary>Errors of a mean that all specimens of the campaign have in common: reference, floor, what is stated; null where the reference does not repeat.</summary>
    public Contribution[]? Shared(double[] weights)
    {
        if (_of.Curves[0].Spread is not { Repeated: true } spread)
        {
            return null;
        }

        double MeanOf(Func<int, double> own)
        {
            double[] read = Read(own);
            return LogWeights.Mean(weights, f => read[f]);
        }

        double[] left = [.. Enumerable.Range(0, spread.ReferenceUnits).Select(j => MeanOf(f => spread.WithoutReference(j, f)))];
        double floor = _of.Curves.Average(c => MeanOf(f => c.Spread?.FloorShift(f) ?? 0));
        int units = left.Length;
        return
        [
            // Jackknife: leaving out a unit moves the mean by this much, (n − 1)/n of the squares are its variance.
            new Contribution(Math.Sqrt((units - 1.0) / units * Sample.SquaredDeviations(left, Sample.Mean(left))), units - 1),
            new Contribution(Math.Abs(floor), spread.FloorDegreesOfFreedom),
            new Contribution(spread.TypeB.StandardUncertainty, spread.TypeB.DegreesOfFreedom),
        ];
    }

    // Of the readings as they come, within the band that is compared; the grid of several campaigns leaves each at least one.
    private double PlainMean(int specimen) =>
        _of.Curves[specimen].Readings.Where(r => _at.Band.Contains(r.Evidence.At)).Average(r => r.Evidence.ReferenceDb - r.Evidence.CoveredDb);

    // Between two frequencies along their logarithm; at a frequency of its own as it is. What is not known on either side is not known between.
    private double[] Read(Func<int, double> own)
    {
        FrequencyGrid grid = _of.Campaign.Grid;
        var read = new double[_at.Count];
        for (int f = 0; f < read.Length; f++)
        {
            int near = grid.NearestPoint(_at[f]);
            double apart = _at.Hertz[f] - grid.Hertz[near];
            int other = apart < 0 ? Math.Max(0, near - 1) : apart > 0 ? Math.Min(grid.Count - 1, near + 1) : near;
            double part = other == near || grid.Hertz[Math.Min(near, other)] == 0 ? 0 : Math.Log(_at.Hertz[f] / grid.Hertz[near]) / Math.Log(grid.Hertz[other] / grid.Hertz[near]);
            read[f] = part == 0 ? own(near) : ((1 - part) * own(near)) + (part * own(other));
        }

        return read;
    }
}
