using SweepStats.Floor;
using SweepStats.Statistics;

namespace SweepStats.Linearity;

/// <summary>
/// Frequencies at which two source levels can be compared: those at which the lower one stands clear of the noise.
/// </summary>
/// <remarks>
/// Overload grows with the level, so they are ordered by it: by both settings alike, since chosen by one its own scatter would
/// look like a step.
/// </remarks>
internal sealed class LinearityPlaces
{
    // Noise adds less than 0.05 dB from here on.
    private const double ClearOfNoiseDb = 20;

    // A resonance of the antennas may overload the receiver in a small part of the band, which a mean over half of it would hide.
    private const double StrongestShare = 0.1;

    private readonly int[] _clear;
    private readonly double[] _both;

    /// <summary>Where the lower level stands 20 dB over the floor and nothing transmits; everywhere without a floor.</summary>
    public LinearityPlaces(SourceLevel low, SourceLevel high, NoiseFloor? floor)
    {
        _clear = [.. Enumerable.Range(0, low.Sweeps[0].Length)
            .Where(f => floor is null || (!floor.Ambient[f] && low.MeanAt(f) > floor.LevelDb[f] + ClearOfNoiseDb))];
        _both = [.. _clear.Select(f => low.MeanAt(f) + high.MeanAt(f))];
    }

    /// <summary>Whether there is one.</summary>
    public bool Any => _clear.Length > 0;

    /// <summary>The upper half of them.</summary>
    public int[] UpperHalf => From(0.5);

    /// <summary>The strongest tenth of them.</summary>
    public int[] Strongest => From(1 - StrongestShare);

    /// <summary>All, by rising level.</summary>
    public int[] Rising => [.. _clear.Zip(_both).OrderBy(p => p.Second).ThenBy(p => p.First).Select(p => p.First)];

    private int[] From(double share)
    {
        double least = Any ? Sample.Quantile(_both, share) : 0;
        return [.. _clear.Where((_, i) => _both[i] >= least)];
    }
}
