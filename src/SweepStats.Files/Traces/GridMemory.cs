namespace SweepStats.Files.Traces;

/// <summary>Remembers the last axis, so that the sweeps of a campaign share one instead of each holding its own.</summary>
internal sealed class GridMemory
{
    private volatile FrequencyAxis? _last;

    /// <summary>The axis of these frequencies, which must be finite and not negative.</summary>
    public FrequencyAxis Of(ReadOnlySpan<double> hertz)
    {
        FrequencyAxis? last = _last;
        if (last is not null && last.Hertz.AsSpan().SequenceEqual(hertz))
        {
            return last;
        }

        FrequencyAxis axis = new([.. hertz]);
        _last = axis;
        return axis;
    }
}
