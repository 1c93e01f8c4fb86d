using SweepStats.Planted.Faults;
using SweepStats.Planted.Trials;

namespace SweepStats.Planted;

/// <summary>Draws faults and tries them.</summary>
internal static class Study
{
    /// <summary>Tries a draw and writes the page.</summary>
    /// <param name="page">Where.</param>
    /// <param name="count">Faults.</param>
    /// <param name="seed">Of the draw.</param>
    public static void Write(string page, int count, ulong seed)
    {
        CoreSource core = CoreSource.Read();
        Equivalents equivalents = Equivalents.Read(Repository.Equivalents);
        Draw draw = Draw.Of(core, equivalents, count, seed);
        Console.WriteLine($"{draw.Faults.Count()} faults of {draw.Places} places drawn, {draw.NotCompiled} that make no program");
        var series = new TrialSeries(core, new EarlierTrials(page, core));
        int tests = series.WithoutFault();
        Console.WriteLine($"without a fault {tests} tests pass");
        Trial[] trials = series.Of([.. draw.Faults]);
        File.WriteAllText(page, StudyPage.Of(draw, equivalents, seed, tests, trials));
        Console.WriteLine(StudyPage.LastLine(trials));
    }

    /// <summary>A first look at what was not caught before of a draw, with the quick tests alone and no page written.</summary>
    /// <param name="seconds">Classes that take longer are left out, by the last run without a fault.</param>
    /// <param name="count">Faults.</param>
    /// <param name="seed">Of the draw.</param>
    public static void Look(double seconds, int count, ulong seed)
    {
        CoreSource core = CoreSource.Read();
        Draw draw = Draw.Of(core, Equivalents.Read(Repository.Equivalents), count, seed);
        Look(core, [.. draw.Faults], seconds, again: false);
    }

    /// <summary>A look at all faults with some words in their file, right or faulty text.</summary>
    public static void Look(double seconds, string[] words)
    {
        CoreSource core = CoreSource.Read();
        Fault[] faults = [.. core.Places().SelectMany(place => place).Where(f => words.Any(f.Key.Contains) && core.Compiles(f))];
        Look(core, faults, seconds, again: true);
    }

    private static void Look(CoreSource core, Fault[] faults, double seconds, bool again)
    {
        var earlier = new EarlierTrials(Repository.Page, core);
        Fault[] open = [.. faults.Where(f => again || earlier.Settled(f) is null)];
        Console.WriteLine($"{faults.Length - open.Length} were caught before");
        Console.WriteLine(StudyPage.LastLine(new TrialSeries(core, earlier) { MostSeconds = seconds }.Of(open)));
    }
}
