namespace SweepStats.Studies.Fuzzing;

/// <summary>Counts of a run; one a thread, added up at the end.</summary>
internal sealed class FuzzTally
{
    private const int Kept = 5;
    private const int SmallestForRatio = 1024;

    private readonly long[] _failures = new long[Enum.GetValues<FuzzFailure>().Length];

    public long Files { get; private set; }

    public long Read { get; private set; }

    public long Refused { get; private set; }

    public long Bytes { get; private set; }

    /// <summary>The slowest files: time and number.</summary>
    public List<(double Milliseconds, long File)> Slowest { get; } = [];

    /// <summary>The greediest files of a kilobyte or more: bytes allocated per byte of file, and number.</summary>
    public List<(double Ratio, long File)> Greediest { get; } = [];

    /// <summary>Of the bytes a file may cost, the largest share that one did.</summary>
    public double LargestShare { get; private set; }

    public long Of(FuzzFailure failure) => _failures[(int)failure];

    public void Add(FuzzCase file, FuzzOutcome outcome)
    {
        Files++;
        Bytes += file.Content.Length;
        Read += outcome.Traces > 0 ? 1 : 0;
        Refused += outcome.Traces == 0 && outcome.Failure is not FuzzFailure.Exception ? 1 : 0;
        if (outcome.Failure is { } failure)
        {
            _failures[(int)failure]++;
        }

        Keep(Slowest, outcome.Milliseconds, file.File);
        LargestShare = Math.Max(LargestShare,
            outcome.Allocated / (double)(FuzzReading.FixedBytes + (FuzzReading.BytesPerByte * (long)file.Content.Length)));
        if (file.Content.Length >= SmallestForRatio)
        {
            Keep(Greediest, outcome.Allocated / (double)file.Content.Length, file.File);
        }
    }

    public void Add(FuzzTally other)
    {
        (Files, Read, Refused, Bytes) = (Files + other.Files, Read + other.Read, Refused + other.Refused, Bytes + other.Bytes);
        LargestShare = Math.Max(LargestShare, other.LargestShare);
        for (int i = 0; i < _failures.Length; i++)
        {
            _failures[i] += other._failures[i];
        }

        other.Slowest.ForEach(s => Keep(Slowest, s.Milliseconds, s.File));
        other.Greediest.ForEach(g => Keep(Greediest, g.Ratio, g.File));
    }

    private static void Keep(List<(double Size, long File)> largest, double size, long file)
    {
        if (largest.Count < Kept || size > largest[^1].Size)
        {
            largest.Add((size, file));
            largest.Sort((a, b) => b.Size.CompareTo(a.Size));
            largest.RemoveRange(Math.Min(Kept, largest.Count), largest.Count - Math.Min(Kept, largest.Count));
        }
    }
}
