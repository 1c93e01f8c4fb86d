namespace SweepStats.Files.Traces.Tables;

/// <summary>The places where a sweep made of segments holds the last frequency of one again as the first of the next.</summary>
internal static class SegmentJoints
{
    // Shorter, two readings a frequency would look like joints.
    private const int FewestPoints = 3;

    private const int Beside = 5;
    private const double TimesBeside = 3;
    private const double LeastDecibels = 1;
    private const double LeastRatio = 0.12;

    /// <summary>
    /// The points that repeat the frequency before them; empty where the frequencies fall somewhere, or a segment is too short to
    /// be one.
    /// </summary>
    public static IReadOnlyList<int> Find(FrequencyAxis axis)
    {
        ReadOnlySpan<double> hertz = axis.Hertz.AsSpan();
        List<int> joints = [];
        int start = 0;
        for (int i = 1; i < hertz.Length; i++)
        {
            if (hertz[i] < hertz[i - 1] || (hertz[i] == hertz[i - 1] && i - start < FewestPoints))
            {
                return [];
            }

            if (hertz[i] == hertz[i - 1])
            {
                start = i;
                joints.Add(i);
            }
        }

        return hertz.Length - start < FewestPoints ? [] : joints;
    }

    /// <summary>
    /// Whether two readings of one frequency differ by no more than three times the largest step between the readings beside
    /// them, five on each side without the two, or by 1 dB. Common sense, no source: a difference above that is a change from
    /// segment to segment (range, attenuation), and neither reading is better than the other.
    /// </summary>
    /// <param name="levels">All readings.</param>
    /// <param name="joint">The second of the two.</param>
    /// <param name="unit">Their unit; null where it is not known.</param>
    public static bool Agree(ReadOnlySpan<double> levels, int joint, LevelUnit? unit)
    {
        double difference = Math.Abs(levels[joint] - levels[joint - 1]);
        double least = unit is { } known && known.IsLinear()
            ? LeastRatio * Math.Max(Math.Abs(levels[joint]), Math.Abs(levels[joint - 1])) : LeastDecibels;
        double step = 0;
        for (int i = Math.Max(1, joint - Beside); i < Math.Min(levels.Length, joint + Beside); i++)
        {
            step = Math.Abs(i - joint) < 2 ? step : Math.Max(step, Math.Abs(levels[i] - levels[i - 1]));
        }

        return difference <= Math.Max(least, TimesBeside * step);
    }

    /// <summary>Values without those of some points.</summary>
    public static ImmutableArray<double> Without(ImmutableArray<double> values, HashSet<int> left)
    {
        var kept = ImmutableArray.CreateBuilder<double>(values.Length);
        for (int i = 0; i < values.Length; i++)
        {
            if (!left.Contains(i))
            {
                kept.Add(values[i]);
            }
        }

        return kept.ToImmutable();
    }

    /// <summary>The sentence about joints, of which the first is named.</summary>
    /// <param name="hertz">Its frequency in Hz.</param>
    /// <param name="joints">How many there are.</param>
    /// <param name="before">Line from 1 of the first of its readings.</param>
    /// <param name="after">Line of the second.</param>
    /// <param name="done">What was done.</param>
    public static string Told(double hertz, int joints, int before, int after, string done) =>
        FormattableString.Invariant($"the frequency {hertz:R} Hz stands twice, at the end of one segment (line {before}) and at ")
            + FormattableString.Invariant($"the beginning of the next (line {after})")
        + (joints == 1 ? "" : FormattableString.Invariant($", and so do {joints - 1} more")) + done;
}
