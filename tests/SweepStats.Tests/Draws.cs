namespace SweepStats.Tests;

/// <summary>How many campaigns a seeded test draws.</summary>
/// <remarks>
/// A quarter of them day by day, so that nobody waits; all of them where the environment variable SWEEPSTATS_DRAWS is "full"
/// (tests/full.sh). The quarter is the first of the full number, never a choice among it: seeds stay in their order.
/// </remarks>
internal static class Draws
{
    private const string Switch = "SWEEPSTATS_DRAWS";
    private const double Kept = 0.25;
    private const int Fewest = 12;

    /// <summary>Whether all are drawn.</summary>
    public static bool Full { get; } = IsFull(Environment.GetEnvironmentVariable(Switch));

    /// <summary>How many of the full number are drawn: a quarter, but no fewer than twelve where there are as many.</summary>
    public static int Of(int all) => Full ? all : Math.Min(all, Math.Max(Fewest, (int)Math.Ceiling(Kept * all)));

    /// <summary>Their seeds: 1, 2, 3 and so on.</summary>
    public static IEnumerable<ulong> Seeds(int all) => Enumerable.Range(1, Of(all)).Select(i => (ulong)i);

    /// <summary>Reads the switch; a misspelt one is refused, or a quarter would pass for the whole.</summary>
    public static bool IsFull(string? value) => value switch
    {
        null or "" => false,
        "full" => true,
        _ => throw new InvalidOperationException($"{Switch} is \"{value}\"; leave it out or set it to \"full\"."),
    };
}
