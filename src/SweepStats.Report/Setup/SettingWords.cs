using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Report.Answer;
using SweepStats.Report.Choice;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedLevel;

namespace SweepStats.Report.Setup;

/// <summary>Choices, settings and floor figures as table rows.</summary>
internal static class SettingWords
{
    internal const string NotStated = "not stated";

    internal static IEnumerable<IReadOnlyList<string>> Choices(AnalysisResult result)
    {
        return [.. Analysis(result), .. Decision(result.Plan), .. Receiver(result)];
    }

    private static IEnumerable<IReadOnlyList<string>> Analysis(AnalysisResult result)
    {
        AnalysisPlan plan = result.Plan;
        yield return ["Confidence", Level(plan.Confidence), "Level of all intervals and bounds"];
        yield return ["Averaging of the receiver", Averages(result.Averaging),
            "Decides how noise adds to a level near the floor"];
        yield return ["Analysed band", plan.Band is { } band ? Band(band) : $"all: {Band(result.Campaign.Grid.Band)}",
            result.Campaign.Interpolation is null ? "Frequencies shared by all sweeps"
                : "Frequencies of the covered sweeps; others are interpolated"];
        yield return ["Requirement", plan.Requirement is { } r ? VerdictWords.Required(r, result.Campaign.Grid) : "none stated",
            "Shielding asked for"];
    }

    private static IEnumerable<IReadOnlyList<string>> Decision(AnalysisPlan plan)
    {
        if (plan.Rule is { } rule)
        {
            yield return ["Confidence of \u201cmeets\u201d and of \u201cfails\u201d", Level(rule.Level),
                "One-sided: how sure either statement has to be"];
            yield return ["Guard band", Exact(rule.GuardBand.Value, "dB"),
                "How far the limit that decides has to lie above the requirement to meet it"];
        }

        yield return ["Margin of dynamic range", Ratio(plan.Margin.Value), "Wanted beyond the requirement"];
    }

    private static IEnumerable<IReadOnlyList<string>> Receiver(AnalysisResult result)
    {
        AnalysisPlan plan = result.Plan;
        yield return ["Declared floor", plan.DeclaredFloorDb is { } floor ? Level(floor, result.Campaign.Scale) : "none",
            "Used where no floor sweep shows noise"];
        yield return ["Source level", Given(plan.SourceDbm, "dBm"),
            "Where linearity sweeps were taken the reference is held against them by it; levels are not corrected for it"];
        yield return ["Highest input level", Given(plan.MaximumInputDbm, "dBm"),
            "Above it the receiver does not show levels without error"];
        yield return ["Stated uncertainties",
            plan.Uncertainties.IsDefaultOrEmpty ? "none" : Count(plan.Uncertainties.Length, "entry"),
            "What repeats do not show; where an error is not stated, no interval covers it"];
    }

    /// <summary>Settings of sweeps of one role; where they differ all are named.</summary>
    internal static IEnumerable<string> Settings(IEnumerable<Sweep> sweeps, ReceiverSettings campaign)
    {
        ReceiverSettings[] all = [.. sweeps.Select(s => s.Settings)];
        yield return Distinct(all, s => Hz(s.ResolutionBandwidthHz ?? campaign.ResolutionBandwidthHz));
        yield return Distinct(all, s => Hz(s.VideoBandwidthHz ?? campaign.VideoBandwidthHz));
        yield return Distinct(all, s => Given(s.AttenuationDb ?? campaign.AttenuationDb, "dB"));
        yield return Distinct(all, s => s.Detector ?? campaign.Detector ?? NotStated);
        yield return Distinct(all, s => s.Averaging ?? campaign.Averaging ?? NotStated);
        yield return Distinct(all, s => Given(s.SweepTimeSeconds ?? campaign.SweepTimeSeconds, "s"));
    }

    internal static string Spread(UncertaintyEntry entry) => entry.Distribution switch
    {
        _ when entry.Mismatch is { } ports => $"mismatch of |\u0393| {Plain(Math.Round(ports.Source.Magnitude, 3))} and "
            + $"{Plain(Math.Round(ports.Load.Magnitude, 3))} (arcsine)",
        ErrorDistribution.Normal => $"normal, k = {Plain(entry.CoverageFactor)}"
            + $"{(double.IsFinite(entry.DegreesOfFreedom) ? $", {Plain(entry.DegreesOfFreedom)} degrees of freedom"
                : string.Empty)}",
        ErrorDistribution.Trapezoidal => $"trapezoidal, flat over ±{Plain(entry.TopHalfWidthDb)} dB",
        ErrorDistribution.Rectangular => "rectangular",
        ErrorDistribution.Triangular => "triangular",
        _ => "arcsine",
    };

    internal static string ActsOn(UncertaintyEntry entry)
    {
        string levels = entry.ActsOn switch
        {
            ErrorActsOn.Reference => "reference",
            ErrorActsOn.Covered => "covered",
            _ => "reference and covered",
        };
        return entry.TimesInDifference switch
        {
            0 => $"{levels}; the same in both, so it cancels",
            2 => $"{levels}; each has its own, so it counts twice",
            _ => levels,
        };
    }

    internal static IEnumerable<IReadOnlyList<string>> FloorFigures(NoiseFloor floor, AnalysisResult result)
    {
        bool measured = floor.Source == FloorSource.Measured;
        yield return ["Source", measured ? Count(floor.SweepCount, "floor sweep") : "declared in the campaign",
            measured ? "Source off, settings as for the other sweeps"
                : $"A declared floor is taken to be right to {Ratio(NoiseFloorEstimator.DeclaredHalfWidthDb)} either way"];
        yield return ["Level", Span(floor.LevelDb, result.Campaign.Scale),
            "Log mean of noise readings, lowest to highest over frequency"];
        foreach (DetectorNoise noise in floor.Noise)
        {
            if (noise.Kept != KeptLook.Average)
            {
                yield return ["Looks of which one is kept", noise.Kept == KeptLook.Highest
                    ? $"the highest of {Looks(noise.Looks)}" : $"the lowest of up to {Looks(noise.Looks)}",
                    noise.Kept == KeptLook.Highest ? "As many as scatter like the floor readings"
                        : "Nothing shows how many; so many are reckoned with"];
                continue;
            }

            yield return ["Looks averaged in power", Looks(noise.Looks),
                measured ? "Independent looks in one reading, as the scatter shows or the averaging says"
                    : "Not known of a declared floor; each of these is reckoned with"];
            if (noise.LogAverages != 1)
            {
                yield return ["Values averaged in dB", Looks(noise.LogAverages), "As the scatter shows"];
            }
        }

        yield return ["Deviation of one reading", measured ? Small(floor.ReadingDeviationDb) : ChoiceChartWords.NotKnown,
            "5.57 dB for a single look at noise; less where looks are averaged"];
        yield return ["Deviation between sweeps",
            floor.SweepOffsetDeviationDb is { } offset ? Small(offset) : ChoiceChartWords.NotKnown,
            "Offset that all frequencies of a sweep share"];
    }

    internal static string Ambient(NoiseFloor floor, FrequencyGrid grid)
    {
        List<FrequencyBand> bands = [];
        for (int i = 0; i < floor.Ambient.Length; i++)
        {
            if (floor.Ambient[i])
            {
                bool joins = i > 0 && floor.Ambient[i - 1];
                FrequencyBand band = joins ? new FrequencyBand(bands[^1].Start, grid[i]) : new FrequencyBand(grid[i], grid[i]);
                bands.RemoveRange(bands.Count - (joins ? 1 : 0), joins ? 1 : 0);
                bands.Add(band);
            }
        }

        return bands.Count == 0
            ? floor.Source == FloorSource.Declared ? "A declared floor shows no transmitters."
            : "No ambient signal was seen in the floor."
            : $"Ambient signals stand in the floor at {string.Join(", ", bands.Select(Band))}. There the floor counts with the "
                + "signal in it.";
    }

    internal static string Averages(AveragingInUse averaging) => Averages(averaging.Averaging) + averaging.Source switch
    {
        AveragingSource.Files => ", as the files state",
        AveragingSource.Recognised => ", as the floor readings show",
        _ => string.Empty,
    };

    private static string Averages(Averaging averaging) => averaging switch
    {
        Averaging.Power => "power (RMS)",
        Averaging.Log => "log (dB values)",
        Averaging.Sample => "one look a reading",
        Averaging.Peak => "none: the highest of several looks is kept",
        Averaging.Lowest => "none: the lowest of several looks is kept",
        _ => "not known for certain: intervals hold for power and for log averaging",
    };

    private static string Distinct(ReceiverSettings[] all, Func<ReceiverSettings, string> setting) =>
        string.Join(" / ", all.Select(setting).Distinct(StringComparer.Ordinal));

    private static string Hz(double? hertz) => hertz is { } f ? Frequency(new Hertz(f)) : NotStated;

    private static string Given(double? value, string unit) => value is { } v ? Exact(v, unit) : NotStated;

    internal static string Looks(double looks) =>
        double.IsFinite(looks) ? Plain(Math.Round(looks, 1)) : "so many that noise does not scatter";

    internal static string Span(ImmutableArray<double> levels, LevelScale scale)
    {
        string low = Level(levels.Min(), scale);
        string high = Level(levels.Max(), scale);
        return low == high ? low : $"{low} to {high}";
    }
}
