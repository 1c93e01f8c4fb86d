using SweepStats.Alignment;

namespace SweepStats.Clipping;

/// <summary>Whether a highest level is equal to another one to the last digit.</summary>
internal static class TopLevel
{
    /// <summary>Whether one of the levels is this one, within 1e-6 dB.</summary>
    public static bool IsAmong(IReadOnlyCollection<double> levels, double level) => levels.Any(l => DisplayStep.IsSame(l, level));
}
