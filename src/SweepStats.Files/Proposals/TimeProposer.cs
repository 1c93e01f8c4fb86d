using System.Globalization;

namespace SweepStats.Files.Proposals;

/// <summary>
/// Guesses when sweeps were taken: as the file states, else as a name does. A day alone is no time: the order within it would be
/// invented, and a floor that seems to be taken before and after the specimens is one that is trusted more.
/// </summary>
internal static class TimeProposer
{
    /// <summary>A guess for each sweep, in their order.</summary>
    public static ImmutableArray<TimeGuess> Of(ImmutableArray<SweepCandidate> sweeps) => [.. sweeps.Select(Guess)];

    private static TimeGuess Guess(SweepCandidate sweep)
    {
        if (sweep.TakenAt is { } stated)
        {
            return stated.TimeOfDay != TimeSpan.Zero ? new TimeGuess(stated, "time: the file states it")
                : new TimeGuess(null, "time: the file states the day alone, which is used as it stands");
        }

        if (Named(sweep) is not { } date)
        {
            return new TimeGuess(null, "time: neither file nor name states it");
        }

        string day = date.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        return date.Clock is { } clock
            ? new TimeGuess(new DateTimeOffset(date.Day.ToDateTime(clock), TimeSpan.Zero), "time: its name states it")
            : new TimeGuess(null, $"time: the name says the day alone ({day}); add the time of day if you know it");
    }

    private static NameDate? Named(SweepCandidate sweep) =>
        sweep.NearestFirst.Select(p => p.Date).FirstOrDefault(d => d is not null);

    /// <summary>The day of a sweep, as its file or a name states it; null where neither does.</summary>
    public static DateOnly? Day(SweepCandidate sweep) =>
        sweep.TakenAt is { } at ? DateOnly.FromDateTime(at.Date) : Named(sweep)?.Day;
}
