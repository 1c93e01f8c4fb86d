using System.Globalization;

namespace SweepStats.Planted.Trials;

/// <summary>
/// The last run without a fault: processor time by class of tests, and how many passed. Kept beside the benches.
/// </summary>
internal static class UsualTimes
{
    private static string Place => Path.Combine(Repository.Bin, "usual.txt");

    private static string[][] Lines => File.Exists(Place) ? [.. File.ReadLines(Place).Select(line => line.Split(' '))] : [];

    /// <summary>Seconds by class; empty where there was no such run.</summary>
    public static IReadOnlyDictionary<string, double> Kept() => Lines.Where(line => line.Length == 2)
        .ToDictionary(line => line[0], line => double.Parse(line[1], CultureInfo.InvariantCulture));

    /// <summary>How many passed of the same core and tests; null where those did not run.</summary>
    /// <param name="version">Of core and tests.</param>
    public static int? Passed(string version) => Lines.FirstOrDefault(line => line.Length == 3 && line[1] == version) is { } whole
        ? int.Parse(whole[2], CultureInfo.InvariantCulture)
        : null;

    public static void Keep(IReadOnlyDictionary<string, double> seconds, string version, int passed) => File.WriteAllLines(Place,
        seconds.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.Key} {p.Value:0.000}"))
            .Prepend(string.Create(CultureInfo.InvariantCulture, $"whole {version} {passed}")));
}
