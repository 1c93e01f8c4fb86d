using System.Diagnostics;
using SweepStats.Files.Traces;

namespace SweepStats.Studies.Fuzzing;

/// <summary>Reads a file and judges the reading, its time and its memory.</summary>
/// <param name="scratch">Path of a file for the strict reading, which takes a path; one a thread.</param>
internal sealed class FuzzReading(string scratch)
{
    /// <summary>Allowance of every file: texts of messages, patterns, pooled buffers that grow once.</summary>
    public const long FixedBytes = 1 << 20;

    /// <summary>Bytes that a byte of file may cost.</summary>
    public const int BytesPerByte = 10;

    private const double HangMilliseconds = 1000;
    private const int StrictEvery = 16;

    /// <summary>
    /// Reads and judges a file. What looks slow or greedy is measured again, and the best of three counts: the collector and
    /// other threads disturb.
    /// </summary>
    public FuzzOutcome Judge(FuzzCase file)
    {
        FuzzOutcome outcome = Once(file);
        for (int again = 0; again < 2 && outcome.Failure is FuzzFailure.Hang or FuzzFailure.Memory; again++)
        {
            FuzzOutcome next = Once(file);
            outcome = next.Failure is null || next.Milliseconds + next.Allocated < outcome.Milliseconds + outcome.Allocated
                ? next : outcome;
        }

        return outcome.Failure is null && file.File % StrictEvery < 2 ? Strict(file, outcome) : outcome;
    }

    private static FuzzOutcome Once(FuzzCase file)
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        long start = Stopwatch.GetTimestamp();
        try
        {
            TraceReading reading = TraceFile.Look(file.Content, file.Name, file.Options);
            double milliseconds = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            long allocated = GC.GetAllocatedBytesForCurrentThread() - before;
            string? broken = file.Content.Length == 0 ? null : FuzzRules.Broken(reading, file.Content, strict: false);
            (FuzzFailure? failure, string told) =
                broken is not null ? (FuzzFailure.Invalid, broken)
                : milliseconds >= HangMilliseconds ? (FuzzFailure.Hang, "a second or more")
                : allocated > FixedBytes + (BytesPerByte * (long)file.Content.Length)
                    ? (FuzzFailure.Memory,
                        FormattableString.Invariant($"{allocated} bytes for {file.Content.Length}, {Came(reading)}"))
                : ((FuzzFailure?)null, "");
            return new FuzzOutcome(failure, told, milliseconds, allocated, reading.Traces.Length);
        }
        catch (Exception e)
        {
            return Thrown(e, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }
    }

    private static string Came(TraceReading reading) =>
        reading.Faults.IsEmpty ? "read" : "refused: " + Started(reading.Faults[0].Problem);

    private static string Started(string text) => text[..Math.Min(text.Length, 100)];

    // The same file from disk, as a campaign reads it.
    private FuzzOutcome Strict(FuzzCase file, FuzzOutcome looked)
    {
        File.WriteAllBytes(scratch, file.Content);
        try
        {
            TraceReading reading = TraceFile.Read(scratch, file.Name, file.Options);
            string? broken = file.Content.Length == 0 ? null
                : FuzzRules.Broken(reading, file.Content, strict: true)
                ?? (looked.Traces == 0 && !reading.Traces.IsEmpty
                    ? "traces in a strict reading that looking did not find" : null);
            return broken is null ? looked : looked with { Failure = FuzzFailure.Invalid, Told = "strict: " + broken };
        }
        catch (Exception e)
        {
            return Thrown(e, looked.Milliseconds);
        }
    }

    private static FuzzOutcome Thrown(Exception e, double milliseconds)
    {
        string place = new StackTrace(e).GetFrames().Select(f => f.GetMethod())
            .FirstOrDefault(
            m => m?.DeclaringType?.Namespace?.StartsWith("SweepStats.Files", StringComparison.Ordinal) == true) is { } method
            ? $"{method.DeclaringType!.Name}.{method.Name}"
            : "?";
        return new FuzzOutcome(FuzzFailure.Exception, $"{e.GetType().Name} in {place}: {e.Message.ReplaceLineEndings(" ")}",
            milliseconds, 0, 0);
    }
}
