using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// Floor sweeps lie on different levels: not all of them show the receiver's noise alone, at the settings of the covered sweeps.
/// </summary>
/// <remarks>
/// One odd sweep has its own finding, and so has a floor that moves from before the specimens to after them; both are taken out
/// first. Intervals allow for how far the sweeps lie apart, and are wider for it than any more source power can mend.
/// </remarks>
internal sealed class UnsteadyFloor : ICheck
{
    // Even of fifty sweeps the farthest seldom lie six standard deviations apart.
    private const double BeyondUsual = 6;
    private const double ClearRiseDb = 10;
    private const int MostNamed = 3;

    /// <inheritdoc/>
    public string Code => "floor-unsteady";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => Lacking.MeasuredFloor(seen)
        ?? (FloorLevels.Of(seen) is null ? "it takes two floor sweeps of eight frequencies that are alike otherwise" : null);

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Floor is not { Source: FloorSource.Measured } floor || FloorLevels.Of(seen) is not { } levels)
        {
            yield break;
        }

        double usual =
            Math.Sqrt(Math.Pow(NoiseFloorEstimator.UnseenOffsetDb, 2) + (Math.Pow(floor.ReadingDeviationDb, 2) / levels.Points));
        if (levels.SpreadDb < BeyondUsual * usual)
        {
            yield break;
        }

        int near = Near(seen, levels.SpreadDb);
        yield return new Finding
        {
            Code = Code,
            Severity = near > 0 ? Severity.Warning : Severity.Note,
            Role = SweepRole.Floor,
            Size = new Decibels(levels.SpreadDb),
            Message = $"Floor sweeps differ by {Amount.Db(levels.SpreadDb)} as a whole: {Named(levels.Higher)} above the rest. "
                + (near > 0 ? "Intervals and bounds allow for it, and are the wider for it at "
                    + $"{Amount.Count(near, "reading", "readings")}."
                    : "No reading lies near the floor, so no interval is wider for it."),
            Basis = string.Create(Amount.Print, $"Means over {levels.Points} frequencies of {floor.SweepCount} floor sweeps; "
                + $"usually they scatter by {usual:0.0} dB. Told from {BeyondUsual:0} times that on."),
            NextStep = "Take the floor again before you add source power: source off, no transmitter near, receiver warm, all "
                + "settings as in the covered sweeps. If you know what was wrong with a sweep, exclude it with that reason in "
                + "sweeps.csv.",
        };
    }

    // Readings that the place of the floor bears on, of all specimens.
    private static int Near(Evidence seen, double spreadDb)
    {
        bool IsNear(ReadingEvidence at) => !at.Ambient && at.CoveredDb - at.FloorDb < ClearRiseDb + spreadDb;
        return seen.Curves.Sum(curve => curve.Readings.Count(reading => IsNear(reading.Evidence)));
    }

    private static string Named(ImmutableArray<string> sweeps) =>
        $"{Amount.Names(sweeps, MostNamed)} {(sweeps.Length == 1 ? "lies" : "lie")}";

    /// <summary>How far the sweeps of the floor lie apart as a whole, and which lie nearer to the highest.</summary>
    private sealed record FloorLevels(double SpreadDb, ImmutableArray<string> Higher, int Points)
    {
        private const int FewestPoints = 8;

        /// <summary>Of floor sweeps that are not odd; null below two of them, or eight frequencies without ambient.</summary>
        public static FloorLevels? Of(Evidence seen)
        {
            SweepBlock? block = seen.Campaign.Floor;
            int[] points = [.. Enumerable.Range(0, block?.PointCount ?? 0).Where(f => !seen.Floor!.Ambient[f])];
            int[] kept = [.. Enumerable.Range(0, block?.SweepCount ?? 0)
                .Where(j => !seen.OddRepeats.Any(odd => ReferenceEquals(odd.Sweep.Sweep, block!.Sweeps[j])))];
            if (kept.Length < 2 || points.Length < FewestPoints)
            {
                return null;
            }

            double[] levels = [.. kept.Select(j => Sample.Mean(RowPart.At(block![j], points)) - Moved(seen.History, j))];
            double middle = (levels.Max() + levels.Min()) / 2;
            return new FloorLevels(levels.Max() - levels.Min(),
                [.. kept.Where((_, i) => levels[i] > middle).Select(j => block!.Sweeps[j].Name)], points.Length);
        }

        private static double Moved(FloorHistory? history, int sweep) =>
            history is { HalfWidthDb: > 0, ChangeDb: { } change } && history.Later[sweep] ? change : 0;
    }
}
