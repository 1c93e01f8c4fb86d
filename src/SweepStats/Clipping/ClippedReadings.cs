using SweepStats.Alignment;

namespace SweepStats.Clipping;

/// <summary>Which readings of a block of sweeps are cut off from above. Immutable.</summary>
/// <remarks>
/// Once a limit is established, one sweep that stands at it is enough: its reading is cut off by an unknown amount, and the mean
/// with it. The mean of clipped readings is too low, never too high. Levels in dB on the scale of the sweeps.
/// </remarks>
public sealed record ClippedReadings
{
    /// <summary>How it shows.</summary>
    public required ClippingKind Kind { get; init; }

    /// <summary>
    /// Frequencies at which some sweep stands at the limit, one a point of the grid; empty where there is none.
    /// </summary>
    public required ImmutableArray<bool> Points { get; init; }

    /// <summary>The highest level that is a limit.</summary>
    public required double LevelDb { get; init; }

    /// <summary>Most neighbouring frequencies at which most of the sweeps stand at the limit.</summary>
    public required int Longest { get; init; }

    /// <summary>Readings that stand at the limit, over all sweeps.</summary>
    public required int ReadingCount { get; init; }

    /// <summary>
    /// Standard deviation of a reading about its neighbours or repeats in dB: about as much as clipping takes from the readings
    /// that it meets here and there.
    /// </summary>
    public required double ScatterDb { get; init; }

    /// <summary>Nothing is cut off.</summary>
    public static ClippedReadings None { get; } =
        new() { Kind = ClippingKind.None, Points = [], LevelDb = double.NaN, Longest = 0, ReadingCount = 0, ScatterDb = 0 };

    /// <summary>Frequencies with a clipped reading.</summary>
    public int Count => Points.Count(p => p);

    /// <summary>Whether the reading at a frequency is cut off.</summary>
    public bool IsAt(int point) => !Points.IsEmpty && Points[point];

    /// <summary>The readings of the sweeps that stand at the limits.</summary>
    /// <param name="kind">How the limits showed.</param>
    /// <param name="block">The sweeps.</param>
    /// <param name="limits">
    /// The limits; a sweep is cut off where it stands at its own highest level and that is one of them.
    /// </param>
    /// <param name="longest">Longest run of neighbouring frequencies in most of the sweeps.</param>
    internal static ClippedReadings At(ClippingKind kind, SweepBlock block, IReadOnlyCollection<double> limits, int longest = 0)
    {
        var points = new bool[block.PointCount];
        (int readings, double highest) = (0, double.NegativeInfinity);
        for (int j = 0; j < block.SweepCount; j++)
        {
            ReadOnlySpan<double> sweep = block[j];
            double top = block.ExtremesDb(j).Highest;
            if (!TopLevel.IsAmong(limits, top))
            {
                continue;
            }

            highest = Math.Max(highest, top);
            for (int f = 0; f < sweep.Length; f++)
            {
                bool clipped = DisplayStep.IsSame(sweep[f], top);
                points[f] |= clipped;
                readings += clipped ? 1 : 0;
            }
        }

        return new ClippedReadings
        {
            Kind = kind,
            Points = [.. points],
            LevelDb = highest,
            Longest = longest,
            ReadingCount = readings,
            ScatterDb = TiedTops.Scatter(block),
        };
    }
}
