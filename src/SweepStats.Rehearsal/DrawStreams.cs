using SweepStats.Statistics;
namespace SweepStats.Rehearsal;

/// <summary>
/// Streams of random numbers: one for each sweep, and one for each fault, so that none shifts the draws of another.
/// </summary>
internal static class DrawStreams
{
    // Beyond all numbers of truth (0), placements (from 1 000) and sweeps.
    private const ulong First = 4_000_000_000;

    /// <summary>Number of the stream of a floor, reference or covered sweep, counted together from 0.</summary>
    public static ulong Sweep(int number) => 1_000_000 + (ulong)number;

    /// <summary>Number of the stream of a linearity sweep.</summary>
    public static ulong Linearity(int number) => 2_000_000_000 + (ulong)number;

    /// <summary>Number of the stream of a plate sweep.</summary>
    public static ulong Plate(int number) => 3_000_000_000 + (ulong)number;

    /// <summary>Which sweeps see a carrier.</summary>
    public static RandomSource Ambient(ulong seed, int carrier, ulong sweep) => Of(seed, 0).Fork((ulong)carrier).Fork(sweep);

    /// <summary>Phase of an odd sweep's standing wave.</summary>
    public static RandomSource OddSweep(ulong seed, ulong sweep) => Of(seed, 1).Fork(sweep);

    /// <summary>Points at which a loose contact shows.</summary>
    public static RandomSource Jumps(ulong seed, ulong sweep) => Of(seed, 2).Fork(sweep);

    /// <summary>Phases of the leak over frequency.</summary>
    public static RandomSource Leak(ulong seed) => Of(seed, 3);

    /// <summary>Errors that all sweeps of a role share.</summary>
    public static RandomSource Systematic(ulong seed, int entry) => Of(seed, 4).Fork((ulong)entry);

    /// <summary>What a placement differs by from frequency to frequency.</summary>
    public static RandomSource PlacementShape(ulong seed, int placement) => Of(seed, 5).Fork((ulong)placement);

    private static RandomSource Of(ulong seed, ulong fault) => new RandomSource(seed).Fork(First + fault);
}
