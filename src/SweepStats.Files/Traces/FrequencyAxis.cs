using SweepStats.Sweeps;

namespace SweepStats.Files.Traces;

/// <summary>The frequencies of a trace in the order of the file. Immutable.</summary>
public sealed class FrequencyAxis
{
    /// <summary>Creates an axis.</summary>
    /// <param name="hertz">Frequencies in Hz, finite and not negative; they need not rise.</param>
    public FrequencyAxis(ImmutableArray<double> hertz)
    {
        Hertz = hertz;
        Grid = Fall is null ? new FrequencyGrid(hertz) : null;
    }

    /// <summary>Frequencies in Hz.</summary>
    public ImmutableArray<double> Hertz { get; }

    /// <summary>
    /// The same as a grid; null where they do not rise at every point: a sweep cannot have such an axis, but a person can look at
    /// it.
    /// </summary>
    public FrequencyGrid? Grid { get; }

    /// <summary>The first point that does not rise above the one before it; null where all do.</summary>
    public int? Fall
    {
        get
        {
            for (int i = 1; i < Hertz.Length; i++)
            {
                if (Hertz[i] <= Hertz[i - 1])
                {
                    return i;
                }
            }

            return null;
        }
    }
}
