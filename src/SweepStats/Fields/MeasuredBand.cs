using SweepStats.Sweeps;

namespace SweepStats.Fields;

/// <summary>
/// Carries a curve from the measured frequencies to those of a <see cref="PulseGrid"/> and past its ends, and weights back.
/// </summary>
/// <remarks>
/// Between readings, in dB straight over log frequency. Outside by <see cref="OutsideBand"/>: none is 0 dB, and so that the jump
/// at the ends does not ring on for ever, the curve sets in smoothly over a tenth of an octave inside them; slope is the
/// least-squares line over log frequency through the readings of the last octave, taken on from the end's reading for a decade.
/// All of it is linear in the readings but for the slope's stop at 0 dB. In a gap of the grid (<see cref="FrequencyGaps"/>)
/// nothing was measured: there too it is 0 dB, whatever is assumed outside, and the curve sets in smoothly beside it.
/// </remarks>
internal sealed class MeasuredBand
{
    private const double SetsInOver = 0.1 * 0.69314718055994531;
    private const double Octave = 2, Decade = 2.302585092994046;

    private readonly double[] _log;
    private readonly BandEnd _lower, _upper;
    private readonly BinPlace[] _places;
    private readonly GapEnds[] _gaps;
    private readonly int _first;

    /// <summary>Finds the place of each frequency of the bins among those measured, once for all curves.</summary>
    public MeasuredBand(FrequencyGrid grid, PulseGrid bins)
    {
        // 0 Hz has no place on a log axis.
        _first = grid.Hertz[0] == 0 && grid.Count > 1 ? 1 : 0;
        _log = [.. grid.Hertz[_first..].ToArray().Select(f => Math.Log(Math.Max(f, double.Epsilon)))];
        _gaps = [.. FrequencyGaps.Of(grid).Select(g => new GapEnds(Math.Log(g.Start.Value), Math.Log(g.Stop.Value)))];
        (Bins, ReadingCount) = (bins, grid.Count);
        (_lower, _upper) = (BandEnd.Of(_log, 0, Math.Log(Octave)), BandEnd.Of(_log, _log.Length - 1, Math.Log(Octave)));
        _places = new BinPlace[bins.Bins];
        for (int k = 0, right = 0; k < _places.Length; k++)
        {
            double log = Math.Log(bins.HertzAt(k));
            while (right < _log.Length && _log[right] < log)
            {
                right++;
            }

            _places[k] = Place(log, right);
        }
    }

    /// <summary>The frequencies that a curve is carried to.</summary>
    public PulseGrid Bins { get; }

    /// <summary>Measured frequencies.</summary>
    public int ReadingCount { get; }

    /// <summary>The curve at every frequency of the grid.</summary>
    /// <param name="readings">Shielding in dB at the measured frequencies, finite.</param>
    /// <param name="outside">What is assumed outside.</param>
    public double[] Spread(ReadOnlySpan<double> readings, OutsideBand outside)
    {
        ReadOnlySpan<double> db = readings[_first..];
        double lower = _lower.SlopeOf(db), upper = _upper.SlopeOf(db);
        var spread = new double[_places.Length];
        for (int k = 0; k < spread.Length; k++)
        {
            BinPlace place = _places[k];
            spread[k] = place.IsInside ? Inside(db, place, outside)
                : outside == OutsideBand.None ? 0
                : outside == OutsideBand.Hold ? db[place.Left]
                : Math.Max(0, db[place.Left] + ((place.Beyond < 0 ? lower : upper) * place.Beyond));
        }

        return spread;
    }

    /// <summary>Weights of the readings from those of the grid's frequencies: the same sum to first order.</summary>
    /// <param name="weights">A weight for each frequency of the grid.</param>
    /// <param name="spread">The curve there, from <see cref="Spread"/>.</param>
    /// <param name="outside">What was assumed outside.</param>
    public double[] Gather(ReadOnlySpan<double> weights, ReadOnlySpan<double> spread, OutsideBand outside)
    {
        var gathered = new double[ReadingCount];
        Span<double> known = gathered.AsSpan(_first);
        double lower = 0, upper = 0;
        for (int k = 0; k < weights.Length; k++)
        {
            BinPlace place = _places[k];
            if (place.IsInside)
            {
                double weight = weights[k] * place.Kept(outside);
                known[place.Left] += weight * (1 - place.Share);
                known[Math.Min(place.Left + 1, known.Length - 1)] += weight * place.Share;
            }
            else if (outside == OutsideBand.Hold || (outside == OutsideBand.Slope && spread[k] > 0))
            {
                known[place.Left] += weights[k];
                double beyond = outside == OutsideBand.Slope ? weights[k] * place.Beyond : 0;
                (lower, upper) = place.Beyond < 0 ? (lower + beyond, upper) : (lower, upper + beyond);
            }
        }

        _lower.AddSlope(known, lower);
        _upper.AddSlope(known, upper);
        return gathered;
    }

    /// <summary>Whether the slope at an end of the band rests on a reading.</summary>
    public bool IsInSlope(int reading) => _lower.Holds(reading - _first) || _upper.Holds(reading - _first);

    /// <summary>Whether a frequency of the grid lies within the band, and in no gap of it.</summary>
    public bool Holds(int k) => _places[k].IsInside && _places[k].BesideGap > 0;

    /// <summary>Place of the reading below a frequency of the grid that lies within the band.</summary>
    public int ReadingBelow(int k) => _first + _places[k].Left;

    /// <summary>Share of the way from there to the next reading.</summary>
    public double ShareAbove(int k) => _places[k].Share;

    private static double Inside(ReadOnlySpan<double> db, BinPlace place, OutsideBand outside)
    {
        double right = db[Math.Min(place.Left + 1, db.Length - 1)];
        double here = db[place.Left] + (place.Share * (right - db[place.Left]));
        return place.Kept(outside) * here;
    }

    private BinPlace Place(double log, int right)
    {
        if (right == 0 && log < _log[0])
        {
            return new BinPlace(0, 0, 0, Math.Max(-Decade, log - _log[0]));
        }

        if (right == _log.Length)
        {
            return new BinPlace(_log.Length - 1, 0, 0, Math.Min(Decade, log - _log[^1]));
        }

        int left = Math.Max(0, right - 1);
        double share = right == left ? 0 : (log - _log[left]) / (_log[right] - _log[left]);
        return new BinPlace(left, share, SetsIn(Math.Min(log - _log[0], _log[^1] - log)), 0) { BesideGap = BesideGap(log) };
    }

    private double BesideGap(double log)
    {
        double nearest = double.PositiveInfinity;
        foreach (GapEnds gap in _gaps)
        {
            nearest = Math.Min(nearest, Math.Max(gap.Low - log, log - gap.High));
        }

        return SetsIn(Math.Max(0, nearest));
    }

    private static double SetsIn(double nepers) => Smooth(Math.Min(1, nepers / SetsInOver));

    private static double Smooth(double way) => way * way * (3 - (2 * way));

    // Beyond: nepers of frequency past the end, negative below the band, 0 inside.
    private readonly record struct BinPlace(int Left, double Share, double SetIn, double Beyond)
    {
        /// <summary>Whether it lies between the first and the last reading, in a gap or not.</summary>
        public bool IsInside => Beyond == 0;

        /// <summary>Share of the readings' shielding that is taken here: none in a gap, all far from it.</summary>
        public double BesideGap { get; init; } = 1;

        /// <summary>The same with the ends of the band, towards which it falls only where 0 dB is assumed outside.</summary>
        public double Kept(OutsideBand outside) => BesideGap * (outside == OutsideBand.None ? SetIn : 1);
    }

    private readonly record struct GapEnds(double Low, double High);
}
