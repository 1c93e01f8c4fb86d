using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>Names of the roles, as folders and in sweeps.csv.</summary>
internal static class Roles
{
    public static IReadOnlyList<string> Names { get; } = ["floor", "reference", "covered", "linearity", "plate"];

    public static SweepRole? Parse(string name) => name.Trim().ToLowerInvariant() switch
    {
        "floor" => SweepRole.Floor,
        "reference" => SweepRole.Reference,
        "covered" => SweepRole.Covered,
        "linearity" => SweepRole.Linearity,
        "plate" => SweepRole.Plate,
        _ => null,
    };

    public static string Name(this SweepRole role) => Names[(int)role];
}
