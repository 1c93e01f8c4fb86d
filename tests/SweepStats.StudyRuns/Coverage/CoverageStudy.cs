using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.StudyRuns.Coverage;

/// <summary>Measures how often the product's intervals hold the truth, on campaigns whose truth is known.</summary>
/// <remarks>
/// Each campaign goes the whole way: drawn as sweeps, aligned, floor estimated, shielding estimated. Its shielding rises over the
/// band so that the covered signal falls from +30.5 to −20.5 dB over the noise; readings are sorted into bins 1 dB wide. The
/// reference stands 60 dB over the noise.
/// </remarks>
public static class CoverageStudy
{
    /// <summary>Lowest bin, in dB.</summary>
    public const int LowestSnr = -20;

    /// <summary>Highest bin, in dB.</summary>
    public const int HighestSnr = 30;

    private const double ReferenceSnr = 60;
    private const int PointsPerBin = 8;

    /// <summary>Runs a cell.</summary>
    /// <param name="cell">Circumstances.</param>
    /// <param name="campaigns">Campaigns to draw; each gives eight readings a bin.</param>
    /// <param name="seed">Seed of all draws.</param>
    /// <returns>One row a bin, rising.</returns>
    public static ImmutableArray<CoverageRow> Run(CoverageCell cell, int campaigns, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(cell);
        var bins = new CoverageBin[HighestSnr - LowestSnr + 1];
        for (int i = 0; i < bins.Length; i++)
        {
            bins[i] = new CoverageBin(LowestSnr + i);
        }

        for (int i = 0; i < campaigns; i++)
        {
            Judge(Rehearser.Draw(Plan(cell, unchecked((seed * 1_000_003) + (ulong)i))), cell, bins);
        }

        return [.. bins.Select(bin => bin.Row())];
    }

    private static RehearsalPlan Plan(CoverageCell cell, ulong seed) => new()
    {
        Seed = seed,
        Points = (HighestSnr - LowestSnr + 1) * PointsPerBin,
        FloorSweeps = cell.Sweeps,
        ReferenceSweeps = cell.Sweeps,
        CoveredSweeps = cell.Sweeps,
        ShieldingStartDb = ReferenceSnr - HighestSnr - 0.5,
        ShieldingStopDb = ReferenceSnr - LowestSnr + 0.5,
        ScatterDb = cell.ScatterDb,
        FloorDbm = -90,
        ReferenceDbm = -90 + ReferenceSnr,
        Averaging = cell.Drawn,
        Looks = cell.Looks,
        Placements = cell.Placements,
        PlacementScatterDb = cell.PlacementDb,
        SystematicErrors = cell.Errors.Entries,
    };

    private static void Judge(RehearsedCampaign rehearsed, CoverageCell cell, CoverageBin[] bins)
    {
        AlignedCampaign aligned = Aligner.Align(rehearsed.Campaign, null);
        NoiseFloor floor = NoiseFloorEstimator.Estimate(aligned.Floor!, cell.Stated);
        ShieldingCurve curve =
            new ShieldingEstimator(aligned, floor, Confidence.NinetyFive, cell.Errors.Entries).Estimate(aligned.Covered[0]);
        for (int f = 0; f < curve.Readings.Length; f++)
        {
            double truth = rehearsed.Truth[0].ShieldingDb[f];
            int bin = (int)Math.Round(ReferenceSnr - truth, MidpointRounding.AwayFromZero) - LowestSnr;
            Interval plain = Plain(aligned, f);
            bins[Math.Clamp(bin, 0, bins.Length - 1)].Add(curve.Readings[f], truth, plain);
        }
    }

    // What a spreadsheet would give: Welch's interval for the difference of the raw levels.
    private static Interval Plain(AlignedCampaign aligned, int f)
    {
        (double reference, Contribution referenceError) = MeanOf(aligned.Reference, f);
        (double covered, Contribution coveredError) = MeanOf(aligned.Covered[0].Block, f);
        ReadOnlySpan<Contribution> parts = [referenceError, coveredError];
        double reach = WelchSatterthwaite.Combined(parts) * StudentT.Quantile(0.975, WelchSatterthwaite.DegreesOfFreedom(parts));
        return new Interval(reference - covered - reach, reference - covered + reach);
    }

    private static (double Mean, Contribution Error) MeanOf(SweepBlock block, int f)
    {
        double sum = 0;
        for (int j = 0; j < block.SweepCount; j++)
        {
            sum += block[j][f];
        }

        double mean = sum / block.SweepCount;
        double squares = 0;
        for (int j = 0; j < block.SweepCount; j++)
        {
            squares += (block[j][f] - mean) * (block[j][f] - mean);
        }

        return (mean, new Contribution(Math.Sqrt(squares / (block.SweepCount - 1) / block.SweepCount), block.SweepCount - 1));
    }
}
