using System.Numerics;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>
/// How single sweeps scatter at neighbouring frequencies: the mean shielding of each innermost group of them, and their scatter
/// about it. In dB.
/// </summary>
/// <remarks>
/// A sweep lies in memory along the frequencies, or in a file. Its part of the neighbours is read at once and once only: no
/// frequency is gathered from all sweeps, far apart from each other, and the scatter is found while the means still move. Source:
/// Welford 1962, Technometrics 4, 419 (from memory).
/// </remarks>
internal sealed class SweepScatter
{
    private readonly LotSpecimens _specimens;
    private readonly int _first;
    private readonly double[] _centres;
    private readonly double[] _within;

    // Group after group, the frequencies beside each other.
    private readonly double[] _means;

    /// <param name="specimens">The specimens with their sweeps.</param>
    /// <param name="first">First of the frequencies.</param>
    /// <param name="count">How many.</param>
    public SweepScatter(LotSpecimens specimens, int first, int count)
    {
        (_specimens, _first) = (specimens, first);
        (_centres, _within, _means) =
            (Centres(specimens, first, count), new double[count], new double[specimens.Design.GroupSizes.Length * count]);
        var values = new double[count];
        int[] seen = new int[specimens.Design.GroupSizes.Length];
        int next = 0;
        foreach (SpecimenSweeps specimen in specimens.Specimens)
        {
            SweepStretch here = specimen.At(first, count);
            for (int j = 0; j < specimen.SweepCount; j++, next++)
            {
                here.Read(j, values);
                int group = specimens.Design.GroupOf[next];
                Add(values, _means.AsSpan(group * count, count), ++seen[group]);
            }
        }
    }

    /// <summary>What the sweeps say at a frequency.</summary>
    public NestedValues At(int f)
    {
        var means = new double[_specimens.Design.GroupSizes.Length];
        for (int g = 0; g < means.Length; g++)
        {
            means[g] = _means[(g * _within.Length) + f - _first];
        }

        return new NestedValues(_centres[f - _first], means, _within[f - _first]);
    }

    private static double[] Centres(LotSpecimens specimens, int first, int count)
    {
        var centres = new double[count];
        foreach (SpecimenSweeps specimen in specimens.Specimens)
        {
            for (int k = 0; k < count; k++)
            {
                centres[k] += specimen.Values[first + k] / specimens.Specimens.Length;
            }
        }

        return centres;
    }

    // Takes a sweep into the mean of its group, which then holds so many.
    private void Add(ReadOnlySpan<double> values, Span<double> means, int seen)
    {
        Vector<double> share = new(1.0 / seen);
        for (int k = 0; k < values.Length; k += Vector<double>.Count)
        {
            Vector<double> value = Lanes.At(values, k) - Lanes.At(_centres, k), before = Lanes.At(means, k);
            Vector<double> mean = before + ((value - before) * share);
            Lanes.Put(mean, means, k);
            Lanes.Put(Lanes.At(_within, k) + ((value - before) * (value - mean)), _within, k);
        }
    }
}
