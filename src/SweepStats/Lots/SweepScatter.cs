using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>
/// How single sweeps scatter at neighbouring frequencies: the mean shielding of each innermost group of them, and their scatter
/// about it. In dB.
/// </summary>
/// <remarks>
/// A sweep lies in memory along the frequencies. Its part of the neighbours is read at once; no frequency is gathered from all
/// sweeps, far apart in memory.
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
        ForEach(AddToMean);
        for (int i = 0; i < _means.Length; i++)
        {
            _means[i] /= specimens.Design.GroupSizes[i / count];
        }

        ForEach(AddToScatter);
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

    private void ForEach(Action<double[], int> add)
    {
        var values = new double[_within.Length];
        int next = 0;
        foreach (SpecimenSweeps specimen in _specimens.Specimens)
        {
            SweepStretch here = specimen.At(_first, values.Length);
            for (int j = 0; j < specimen.SweepCount; j++)
            {
                here.Read(j, values);
                for (int k = 0; k < values.Length; k++)
                {
                    values[k] -= _centres[k];
                }

                add(values, _specimens.Design.GroupOf[next++] * values.Length);
            }
        }
    }

    private void AddToMean(double[] values, int group)
    {
        Span<double> means = _means.AsSpan(group, values.Length);
        for (int k = 0; k < means.Length; k++)
        {
            means[k] += values[k];
        }
    }

    private void AddToScatter(double[] values, int group)
    {
        ReadOnlySpan<double> means = _means.AsSpan(group, values.Length);
        for (int k = 0; k < means.Length; k++)
        {
            double apart = values[k] - means[k];
            _within[k] += apart * apart;
        }
    }
}
