using SweepStats.Sweeps;

namespace SweepStats.Files.Traces;

/// <summary>Remembers the last grid, so that the sweeps of a campaign share one instead of each holding its own.</summary>
internal sealed class GridMemory
{
    private volatile FrequencyGrid? _last;

    /// <summary>The grid of these frequencies, which must be rising.</summary>
    public FrequencyGrid Of(ReadOnlySpan<double> hertz)
    {
        FrequencyGrid? last = _last;
        if (last is not null && last.Hertz.SequenceEqual(hertz))
        {
            return last;
        }

        FrequencyGrid grid = new([.. hertz]);
        _last = grid;
        return grid;
    }
}
