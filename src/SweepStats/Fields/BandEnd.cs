namespace SweepStats.Fields;

/// <summary>
/// The least-squares slope over log frequency at one end of a band, as weights of the readings: 0 where its last octave has one
/// reading.
/// </summary>
/// <param name="From">First reading of the last octave.</param>
/// <param name="Weights">What each of them counts in the slope.</param>
internal sealed record BandEnd(int From, double[] Weights)
{
    /// <param name="log">Logarithms of the measured frequencies, rising.</param>
    /// <param name="end">Place of the end: the first or the last.</param>
    /// <param name="reach">How far from it readings count.</param>
    public static BandEnd Of(double[] log, int end, double reach)
    {
        int[] near = [.. Enumerable.Range(0, log.Length).Where(i => Math.Abs(log[i] - log[end]) <= reach * (1 + 1e-12))];
        double mean = near.Average(i => log[i]), squares = near.Sum(i => (log[i] - mean) * (log[i] - mean));
        return new BandEnd(near[0], [.. near.Select(i => squares > 0 ? (log[i] - mean) / squares : 0)]);
    }

    /// <summary>Whether the slope rests on a reading.</summary>
    public bool Holds(int reading) => reading >= From && reading < From + Weights.Length;

    /// <summary>The slope in dB per neper of frequency.</summary>
    public double SlopeOf(ReadOnlySpan<double> db)
    {
        double slope = 0;
        for (int i = 0; i < Weights.Length; i++)
        {
            slope += Weights[i] * db[From + i];
        }

        return slope;
    }

    /// <summary>Adds a weight of the slope to those of the readings.</summary>
    public void AddSlope(Span<double> readings, double weight)
    {
        for (int i = 0; i < Weights.Length; i++)
        {
            readings[From + i] += weight * Weights[i];
        }
    }
}
