using SweepStats.Alignment;

namespace SweepStats.Clipping;

/// <summary>Whether a highest level is equal to another one to the last digit.</summary>
internal static class TopLevel
{
    public static bool IsAmong(IReadOnlyCollection<double> levels, double level) => levels.Any(l => DisplayStep.IsSame(l, level));
}
