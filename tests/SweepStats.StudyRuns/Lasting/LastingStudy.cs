using SweepStats.Alignment;
using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Floor;
using SweepStats.Leakage;
using SweepStats.Quantities;
using SweepStats.Repeats;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;

namespace SweepStats.StudyRuns.Lasting;

/// <summary>Measures how often intervals hold where sweeps resemble those before them, and how often that is found.</summary>
/// <remarks>Far above the floor: the reference stands 80 dB over it, the specimen shields 40 dB. The same cell, number of
/// campaigns and seed give the same figures.</remarks>
public static class LastingStudy
{
    private const double ShieldingDb = 40;
    private const double LevelDb = -20;
    private const double FloorDb = -100;

    /// <summary>Runs a cell.</summary>
    /// <param name="cell">Kind of campaign.</param>
    /// <param name="campaigns">Campaigns to draw.</param>
    /// <param name="seed">Seed of all draws.</param>
    public static LastingRow Run(LastingCell cell, int campaigns, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(cell);
        LastingTrial[] trials = [.. Enumerable.Range(0, campaigns)
            .Select(i => Trial(cell, unchecked((seed * 1_000_003) + (ulong)i)))];
        LastingTrial[] found = [.. trials.Where(t => t.Found)];
        return new LastingRow
        {
            Campaigns = campaigns,
            Held = trials.Average(t => t.Held),
            ClaimedTooMuch = trials.Average(t => t.ClaimedTooMuch),
            HeldAsIndependent = trials.Average(t => t.HeldAsIndependent),
            WidthRatio = trials.Average(t => t.WidthRatio),
            Found = (double)found.Length / campaigns,
            HeldWhereFound = found.Length == 0 ? double.NaN : found.Average(t => t.Held),
            ToldOrHeld = trials.Average(t => t.Warned || t.Held >= 0.9 ? 1 : 0),
            BandHeld = trials.Average(t => t.BandHeld ? 1 : 0),
            BandHeldAsIndependent = trials.Average(t => t.BandHeldAsIndependent ? 1 : 0),
        };
    }

    /// <summary>In how many campaigns sweeps are found to be alike.</summary>
    /// <param name="draw">The campaign of a number.</param>
    /// <param name="campaigns">How many.</param>
    public static Tally Found(Func<int, Campaign> draw, int campaigns)
    {
        ArgumentNullException.ThrowIfNull(draw);
        return Tally.Over(Enumerable.Range(0, campaigns).Select(i => (bool?)IsFound(draw(i))));
    }

    /// <summary>Draws a campaign of a kind.</summary>
    public static Campaign Draw(LastingCell cell, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(cell);
        var random = new RandomSource(seed);
        double[][] lasting = LastingDraw.Of(cell, 2 * cell.Sweeps, random);
        var grid = new FrequencyGrid([.. Enumerable.Range(0, cell.Points).Select(f => 1e8 + (1e6 * f))]);
        Sweep[] floor = [.. Enumerable.Range(0, 3).Select(j => Floor(j, grid, random))];
        return new Campaign("Sweeps that go together", [.. floor, .. lasting.Select((x, j) => Lasting(cell, grid, x, j))]);
    }

    private static Sweep Floor(int number, FrequencyGrid grid, RandomSource random) =>
        new($"floor-{number}", SweepRole.Floor, grid,
            [.. Enumerable.Range(0, grid.Count).Select(_ => FloorDb + (0.5 * random.Normal()))], LevelScale.DecibelMilliwatts);

    private static Sweep Lasting(LastingCell cell, FrequencyGrid grid, double[] lasting, int number)
    {
        bool covered = number >= cell.Sweeps;
        double level = LevelDb - (covered ? ShieldingDb : 0);
        SweepRole role = covered ? SweepRole.Covered : SweepRole.Reference;
        return new Sweep($"sweep-{number}", role, grid, [.. lasting.Select(x => level + (cell.ScatterDb * x))],
            LevelScale.DecibelMilliwatts)
        {
            Lot = covered ? "A" : null,
            Specimen = covered ? "A01" : null,
        };
    }

    private static bool IsFound(Campaign campaign)
    {
        AlignedCampaign aligned = Aligner.Align(campaign, null);
        NoiseFloor floor = NoiseFloorEstimator.Estimate(aligned.Floor!, Averaging.Power);
        return SerialCorrelation.Of(aligned, floor, OddRepeats.Among(RepeatGroups.Of(aligned, floor))).Found.Any();
    }

    private static LastingTrial Trial(LastingCell cell, ulong seed)
    {
        var plan = new AnalysisPlan { Averaging = Averaging.Power };
        AnalysisResult result = Analysis.Run(Draw(cell, seed), plan);
        ShieldingCurve plain = AsIndependent(cell, seed, result);
        Interval[] now = Intervals(result.Curves[0]), before = Intervals(plain);
        return new LastingTrial
        {
            Held = now.Average(i => i.Contains(ShieldingDb) ? 1 : 0),
            ClaimedTooMuch = now.Average(i => i.Low > ShieldingDb ? 1 : 0),
            HeldAsIndependent = before.Average(i => i.Contains(ShieldingDb) ? 1 : 0),
            WidthRatio = now.Zip(before, (a, b) => a.Width / b.Width).Where(double.IsFinite).Average(),
            Found = result.SerialCorrelation.Found.Any(),
            Warned = result.Findings.Any(f => f.Code == "sweeps-alike" && f.Severity == Severity.Warning),
            BandHeld = Holds(BandEstimator.State(result.Curves[0], result.Campaign.Grid, null, plan.Confidence)),
            BandHeldAsIndependent = Holds(BandEstimator.State(plain, result.Campaign.Grid, null, plan.Confidence)),
        };
    }

    // A drift or a leakage that chance shows now and then is allowed for in both.
    private static ShieldingCurve AsIndependent(LastingCell cell, ulong seed, AnalysisResult result) => new ShieldingEstimator(
        result.Campaign, result.Floor, result.Plan.Confidence, [.. new[] { result.Doubts.Drift }.OfType<UncertaintyEntry>()],
        FloorAndLeakage.Of(Aligner.Align(Draw(cell, seed), null), result.Averaging.Averaging, result.History, false).Levels)
        .Estimate(result.Campaign.Covered[0]);

    private static bool Holds(BandStatement band) => band.MeanDb.Low <= ShieldingDb && band.MeanDb.High >= ShieldingDb;

    private static Interval[] Intervals(ShieldingCurve curve) => [.. curve.Readings.Select(reading => reading switch
    {
        ShieldingReading.Measured m => new Interval(m.Shielding.Low.Value, m.Shielding.High.Value),
        ShieldingReading.AtLeast bound => new Interval(bound.Bound.Value, double.PositiveInfinity),
        _ => new Interval(double.NegativeInfinity, double.PositiveInfinity),
    })];

    private sealed record LastingTrial
    {
        /// <summary>Share of frequencies whose interval holds the true shielding.</summary>
        public required double Held { get; init; }

        /// <summary>Share of frequencies whose lower limit lies above the truth.</summary>
        public required double ClaimedTooMuch { get; init; }

        /// <summary>Share held by intervals that take the sweeps for independent.</summary>
        public required double HeldAsIndependent { get; init; }

        /// <summary>Mean ratio of the interval's width to that of independent sweeps, where it is finite.</summary>
        public required double WidthRatio { get; init; }

        /// <summary>Whether sweeps were found to resemble those before them.</summary>
        public required bool Found { get; init; }

        /// <summary>Whether the check warns of it.</summary>
        public required bool Warned { get; init; }

        /// <summary>Whether the interval of the band's mean holds the truth.</summary>
        public required bool BandHeld { get; init; }

        /// <summary>Whether that of independent sweeps does.</summary>
        public required bool BandHeldAsIndependent { get; init; }
    }
}
