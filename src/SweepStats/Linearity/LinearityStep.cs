using SweepStats.Statistics;

namespace SweepStats.Linearity;

/// <summary>How far the receiver follows a step of the source. Immutable.</summary>
/// <param name="LowDbm">Lower source level.</param>
/// <param name="HighDbm">Higher source level.</param>
/// <param name="ShortfallDb">The step minus what the receiver shows of it: positive where it shows too little.</param>
/// <param name="Interval">Limits of the shortfall in dB; null where one sweep at a level allows none.</param>
/// <param name="LowSweeps">Sweeps at the lower source level.</param>
/// <param name="HighSweeps">Sweeps at the higher source level.</param>
/// <param name="PointCount">Frequencies compared.</param>
public sealed record LinearityStep(double LowDbm, double HighDbm, double ShortfallDb, Interval? Interval, int LowSweeps,
    int HighSweeps, int PointCount)
{
    /// <summary>Least shortfall that is told, in dB.</summary>
    /// <remarks>Steps of sources are good to one or two tenths of a dB; less than a quarter is no sign of overload.</remarks>
    public const double WorthTellingDb = 0.25;

    /// <summary>
    /// The receiver is shown to fall short: by as much as is told, and by more than chance explains where that is known.
    /// </summary>
    public bool IsShort => ShortfallDb >= WorthTellingDb && Interval is not { Low: <= 0 };

    /// <summary>
    /// The receiver is shown to rise by more than the source: by as much as is told, and by more than chance explains where that
    /// is known.
    /// </summary>
    public bool IsExcess => ShortfallDb <= -WorthTellingDb && Interval is not { High: >= 0 };
}
