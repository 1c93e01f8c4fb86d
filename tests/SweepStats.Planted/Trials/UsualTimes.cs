using System.Globalization;

namespace SweepStats.Planted.Trials;

/// <summary>Processor time by class of tests, as the last run without a fault found it: kept beside the benches.</summary>
internal static class UsualTimes
{
    private static string Place => Path.Combine(Repository.Bin, "usual.txt");

    /// <summary>Seconds by class; empty where there was no such run.</summary>
    public static IReadOnlyDictionary<string, double> Kept() => File.Exists(Place)
        ? File.ReadLines(Place).Select(line => line.Split(' '))
            .ToDictionary(part => part[0], part => double.Parse(part[1], CultureInfo.InvariantCulture))
        : new Dictionary<string, double>();

    public static void Keep(IReadOnlyDictionary<string, double> seconds) => File.WriteAllLines(Place,
        seconds.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.Key} {p.Value:0.000}")));
}
