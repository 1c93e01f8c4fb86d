using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// The covered sweeps do not scatter as they would over this floor: it was taken with other settings than they were.
/// </summary>
/// <remarks>
/// Noise of M looks scatters by a number of decibels that no attenuator changes, a signal far over it by a small part of that.
/// Readings that lie in the floor have to scatter nearly as it does, and readings far over it as little as the reference does.
/// Told only where the difference is plain.
/// </remarks>
internal sealed class ForeignFloor : ICheck
{
    // Up to here a reading scatters by at least 0.87 of what the noise does: √(1 + 2s)/(1 + s) at a signal s as strong as the
    // noise.
    private const double InNoiseDb = 3;
    private const double LeastOfNoise = 0.6;

    // From here on the noise adds less than a quarter of its own scatter: √(2/s).
    private const double FarOverDb = 15;
    private const double LikeNoise = 0.75;
    private const double OverReference = 3;

    // No plate takes noise away; a quarter of it left is another noise (judgement, no source).
    private const double UnderFloorDb = 6;

    // Of fewer readings a scatter is not known well enough.
    private const int FewestFreedoms = 100;
    private const int FewestPoints = 8;

    /// <inheritdoc/>
    public string Code => "foreign-floor";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => Lacking.MeasuredFloor(seen)
        ?? (seen.Floor!.SweepCount < 2 ? "it takes two floor sweeps" : null);

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Floor is not { Source: FloorSource.Measured, SweepCount: > 1 } floor
            || DisplayStep.Of(seen.Campaign.Floor!) > floor.ReadingDeviationDb)
        {
            yield break;
        }

        if (UnderFloor(seen, floor) is { } under)
        {
            yield return under;
        }

        foreach (SpecimenBlock specimen in seen.Campaign.Covered)
        {
            double[] rise = [.. specimen.Block.Means().Select((level, f) => level - floor.LevelDb[f])];
            int[] Where(Func<double, bool> wanted) =>
                [.. Enumerable.Range(0, rise.Length).Where(f => !floor.Ambient[f] && wanted(rise[f]))];
            int[] low = Where(r => r <= InNoiseDb), high = Where(r => r >= FarOverDb);
            if (Scatter(specimen.Block, low) is { } quiet && quiet < LeastOfNoise * floor.ReadingDeviationDb)
            {
                yield return Told(seen, specimen.Name, low,
                    new ScatterSeen(quiet, "They lie in that floor and are steadier than it", "too large", Bias.Unknown));
            }
            else if (Scatter(specimen.Block, high) is { } loud && loud > LikeNoise * floor.ReadingDeviationDb
                && Scatter(seen.Campaign.Reference, high) is { } reference && loud > OverReference * reference)
            {
                yield return Told(seen, specimen.Name, high,
                    new ScatterSeen(loud, "They stand far over that floor and scatter as noise does", "too small",
                        Bias.TooSmall));
            }
        }
    }

    // Behind a plate nothing but noise is left: where it reads lower, the floor sweeps held more than that.
    private Finding? UnderFloor(Evidence seen, NoiseFloor floor)
    {
        SetAsideSweep[] plates = [.. SetAsideSweeps.OnGrid(seen.Campaign, SweepRole.Plate)];
        if (plates.Length == 0 || seen.Campaign.Grid.Count < FewestPoints)
        {
            return null;
        }

        double under = Sample.Median([.. floor.LevelDb.Select((level, f) => level - plates.Average(p => p.Levels[f]))]);
        return under < UnderFloorDb ? null : new Finding
        {
            Code = Code,
            Severity = Severity.Warning,
            Role = SweepRole.Floor,
            Size = new Decibels(under),
            Bias = Bias.Unknown,
            Misleads = true,
            Message = $"The plate sweeps read {Amount.Db(under)} below the floor. No plate takes noise away: the floor was taken "
                + "with the source on, or with other settings. Bounds may lie above the truth.",
            Basis = $"Median over {Amount.Count(seen.Campaign.Grid.Count, "frequency", "frequencies")} of the floor less "
                + "the mean "
                + $"of {Amount.Count(plates.Length, "plate sweep", "plate sweeps")}; told from {Amount.Db(UnderFloorDb)} on.",
            NextStep = "Take the floor again with the source off and the settings of the covered sweeps.",
        };
    }

    private Finding Told(Evidence seen, SpecimenName specimen, int[] points, ScatterSeen scatter) => new()
    {
        Code = Code,
        Severity = Severity.Warning,
        Role = SweepRole.Covered,
        Specimen = specimen,
        Where = Stretches.Where(seen.Campaign.Grid, points.Contains),
        Bias = scatter.Bias,
        Message = $"At {Amount.OutOf(points.Length, seen.Campaign.Grid.Count)} the covered sweeps scatter by "
            + $"{Hundredths(scatter.Db)}, the floor by {Hundredths(seen.Floor!.ReadingDeviationDb)}. {scatter.What}: what was "
            + $"taken as the floor is not the noise under them. The shielding may come out {scatter.Size}.",
        Basis = string.Create(Amount.Print, $"Standard deviations of a reading without the offset of its sweep, over "
            + $"{points.Length} frequencies. In the floor at least {LeastOfNoise:0.0} of its scatter is expected; {FarOverDb:0} "
            + $"dB over it less than {LikeNoise:0.00}, unless the reference scatters alike."),
        NextStep = "Take the floor again with the settings of the covered sweeps: attenuator, preamplifier, bandwidth, "
            + "averaging.",
    };

    private static string Hundredths(double db) => string.Create(Amount.Print, $"{db:0.00} dB");

    // Of a reading about its frequency's and its sweep's mean, pooled over placements; null where too little shows it.
    private static double? Scatter(SweepBlock block, int[] points)
    {
        if (points.Length < FewestPoints)
        {
            return null;
        }

        double squares = 0;
        int freedoms = 0;
        foreach (IGrouping<string?, int> placement in Enumerable.Range(0, block.SweepCount)
            .GroupBy(j => block.Sweeps[j].Placement))
        {
            int[] rows = [.. placement];
            squares += SquaresAmong(block, rows, points);
            freedoms += (rows.Length - 1) * (points.Length - 1);
        }

        return freedoms < FewestFreedoms ? null : Math.Sqrt(squares / freedoms);
    }

    private static double SquaresAmong(SweepBlock block, int[] rows, int[] points)
    {
        ReadOnlySpan<double> means = block.Means(rows).AsSpan();
        double squares = 0;
        foreach (int row in rows)
        {
            ReadOnlySpan<double> levels = block[row];
            double sum = 0, own = 0;
            foreach (int f in points)
            {
                double away = levels[f] - means[f];
                sum += away;
                own += away * away;
            }

            squares += own - (sum * sum / points.Length);
        }

        return squares;
    }

    /// <summary>How the covered sweeps scatter, and what it says.</summary>
    private sealed record ScatterSeen(double Db, string What, string Size, Bias Bias);
}
