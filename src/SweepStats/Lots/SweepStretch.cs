using System.Numerics;
using SweepStats.Alignment;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>The sweeps of a specimen at neighbouring frequencies. In dB.</summary>
/// <param name="block">The sweeps.</param>
/// <param name="first">Place of the first frequency.</param>
/// <param name="values">Shielding of the specimen, or the bound that it lies above.</param>
/// <param name="slopes">How much the shielding falls for each dB that the level rises; 0 where only a bound is known.</param>
/// <param name="means">Mean levels.</param>
internal sealed class SweepStretch(SweepBlock block, int first, ReadOnlyMemory<double> values, double[] slopes, double[] means)
{
    /// <summary>Shielding of a sweep; the bound where only that is known.</summary>
    /// <param name="sweep">Its place.</param>
    /// <param name="shielding">Room for the values of all frequencies.</param>
    public void Read(int sweep, Span<double> shielding)
    {
        block.Read(sweep, first, shielding);
        ReadOnlySpan<double> whole = values.Span;
        for (int k = 0; k < shielding.Length; k += Vector<double>.Count)
        {
            Vector<double> away = Lanes.At(shielding, k) - Lanes.At(means, k);
            Lanes.Put(Lanes.At(whole, k) - (Lanes.At(slopes, k) * away), shielding, k);
        }
    }
}
