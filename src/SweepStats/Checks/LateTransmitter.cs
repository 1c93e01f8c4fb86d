using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// Covered levels that stand alone behind most specimens, at frequencies where the floor shows nothing: a transmitter that came
/// after it was taken, or a narrow leak.
/// </summary>
/// <remarks>
/// Either stands above both sides of its frequency, in the covered level and against the reference, so that a null of the
/// reference is none. A floor taken before and after would have held the transmitter, unless it came and went in between: then
/// it is more likely a leak, a result, and only noted. What is as wide as the stretch between the sides is not seen, nor what
/// lies within seven frequencies of an end of the band, nor two that are two frequencies apart.
/// </remarks>
internal sealed class LateTransmitter : ICheck
{
    // Beside a frequency, its neighbours left out: a transmitter may spill into them.
    private const int NearestBeside = 2, FarthestBeside = 7;
    private const int FewestPoints = (2 * FarthestBeside) + 6;

    // Four times the power; and so far beyond what the curve moves from one frequency to the next (judgement, no source).
    private const double LeastDb = 6, Deviations = 6;

    // Median of |x| of a normal variable, in standard deviations; and of a level less the mean of two others.
    private const double NormalMedian = 0.6745, OfThree = 1.2247;

    // Behind one specimen of several it is a hole of that one (judgement, no source).
    private const double ShareOfSpecimens = 0.5;

    public string Code => "late-transmitter";

    public string? UntestedBecause(Evidence seen) => Lacking.Floor(seen)
        ?? (seen.Campaign.Grid.Count >= FewestPoints ? null : $"fewer than {FewestPoints} frequencies have no sides to speak of");

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (UntestedBecause(seen) is not null)
        {
            return [];
        }

        double[][] alone = SideBySide.Of(seen.Curves.Length, seen.Threads, i => AloneDb(seen.Curves[i], seen.Floor!));
        int[] here = [.. Enumerable.Range(0, seen.Campaign.Grid.Count)
            .Where(f => alone.Count(a => a[f] > 0) is > 0 and var some && some >= ShareOfSpecimens * alone.Length)];
        return here.Length == 0 ? [] : [Told(seen, here, alone)];
    }

    // By how much a covered level stands above both its sides; 0 where it does not.
    private static double[] AloneDb(ShieldingCurve curve, NoiseFloor floor)
    {
        double[] covered = curve.Readings.CoveredDb.ToArray();
        double[] through = [.. curve.Readings.ReferenceDb.ToArray().Select((level, f) => covered[f] - level)];
        double limit = Math.Max(LeastDb, Deviations * UnevennessDb(through));
        var alone = new double[covered.Length];
        for (int f = FarthestBeside; f < covered.Length - FarthestBeside; f++)
        {
            double apart = Math.Min(OverSidesDb(covered, f), OverSidesDb(through, f));
            bool isClear = !floor.Ambient[f] && covered[f] >= floor.LevelDb[f] + HeardFrequencies.RiseDb;
            alone[f] = isClear && apart >= limit ? apart : 0;
        }

        return alone;
    }

    // What neighbours differ by, peaks aside.
    private static double UnevennessDb(double[] levels) => Sample.Median([.. Enumerable.Range(1, levels.Length - 2)
        .Select(f => Math.Abs(levels[f] - ((levels[f - 1] + levels[f + 1]) / 2)))]) / NormalMedian / OfThree;

    // The sides are looked at only where the nearest of them lie low.
    private static double OverSidesDb(double[] levels, int f) =>
        levels[f] - Math.Max(levels[f - NearestBeside], levels[f + NearestBeside]) < LeastDb ? 0
            : levels[f] - Math.Max(Sample.Median(levels.AsSpan((f - FarthestBeside)..(f - NearestBeside + 1))),
                Sample.Median(levels.AsSpan((f + NearestBeside)..(f + FarthestBeside + 1))));

    private Finding Told(Evidence seen, int[] here, double[][] alone)
    {
        int specimens = alone.Count(a => here.Any(f => a[f] > 0));
        double highest = here.Max(f => alone.Max(a => a[f]));
        bool bracketed = seen.History is { Bracketed: true }, declared = seen.Floor is { Source: FloorSource.Declared };
        string behind = alone.Length == 1 ? seen.Curves[0].Name.ToString() : $"{specimens} of {alone.Length} specimens";
        return new()
        {
            Code = Code,
            Severity = bracketed ? Severity.Note : Severity.Warning,
            Role = SweepRole.Covered,
            Where = Stretches.Where(seen.Campaign.Grid, here.Contains),
            Size = new Decibels(highest),
            Bias = bracketed ? null : Bias.TooSmall,
            Message = $"At {Amount.OutOf(here.Length, seen.Campaign.Grid.Count)} the covered level stands alone, up to "
                + $"{Amount.Db(highest)} above both sides, behind {behind}. So a narrow leak reads, and so does a transmitter "
                + (bracketed ? "that was on only while the specimens were swept."
                    : declared ? "which a declared floor does not show." : "that came after the floor was taken."),
            Basis = $"Covered level, and covered less reference, against the medians of {FarthestBeside - NearestBeside + 1} "
                + $"frequencies to either side; told from {Amount.Db(LeastDb)} and {Deviations:0} times the unevenness of the "
                + "curve on.",
            NextStep = bracketed
                ? "Sweep a specimen in place with the source off, and look there: what still stands is a transmitter."
                : $"Sweep the floor{(declared ? string.Empty : " once more")}, source off and all else as it is, and "
                    + "keep it with the others (taken = \"before-and-after\" under [floor], or taken_at). If nothing stands "
                    + "there, it is a leak.",
        };
    }
}
