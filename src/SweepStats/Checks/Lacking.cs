using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>What is missing where several checks cannot be made for the same reason.</summary>
internal static class Lacking
{
    /// <summary>A floor, measured or declared; null where there is one.</summary>
    public static string? Floor(Evidence seen) => seen.Floor is not null ? null
        : seen.FloorLife is null && UnreadFiles.Of(seen.Campaign.Unread, SweepRole.Floor) is { } unread ? unread.Told
        : seen.FloorLife is null ? "no floor sweep is in use and no floor is declared" : "the floor sweeps show no noise";

    /// <summary>A floor that was measured; null where there is one.</summary>
    public static string? MeasuredFloor(Evidence seen) =>
        Floor(seen) ?? (seen.Floor!.Source == FloorSource.Declared ? "the floor is declared, not measured" : null);

    /// <summary>Sweeps of a role that none were taken of, or that could not be read.</summary>
    public static string Sweeps(Evidence seen, SweepRole role) =>
        UnreadFiles.Of(seen.Campaign.Unread, role)?.Told
            ?? (role == SweepRole.Floor ? "no floor sweep is in use"
                : $"there are no {role.ToString().ToLowerInvariant()} sweeps");

    /// <summary>Levels in dBm, which a limit in dBm can be held against; null where they are.</summary>
    public static string? Milliwatts(Evidence seen) =>
        seen.Campaign.Scale == LevelScale.DecibelMilliwatts ? null : $"levels are in {seen.Campaign.Scale.Symbol()}, not in dBm";
}
