using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>The sweeps contradict what is stated of the averaging, or were taken in a way no averaging describes.</summary>
internal sealed class AveragingDoubtful : ICheck
{
    private const string TakeAgain = "Take all sweeps again with an RMS (power average) detector or a sample detector, and the "
        + "trace cleared for each sweep.";

    // What a reader would not round away.
    private const double MaterialDb = 0.1;

    // Standard errors; 1 of 1000 floors of single looks lies beyond.
    private const double LeansUp = 3.09;

    // Readings of so many looks scatter by less than most displays show.
    private const double MostLooks = 1000;

    // "About one look" says the opposite of what is meant.
    private const double LeastLooks = 1.5;

    /// <inheritdoc/>
    public string Code => "averaging-doubtful";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) =>
        seen.Campaign.Used().Any(s => s.Settings.TraceMode is not null || s.Settings.Detector is not null) ? null
            : "the files state no detector and no trace mode"
                + (seen.Averaging.Averaging == Averaging.Sample && seen.Floor is { Source: FloorSource.Measured } floor
                    && SingleLookScatter.Least(floor) > 0
                    ? "; the scatter of the floor was looked at" : string.Empty);

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen) => new[] { Smoothed(seen), Disagreeing(seen), Otherwise(seen), Kept(seen),
        Downward(seen), NeverAveraged(seen) }.OfType<Finding>();

    private Finding? Smoothed(Evidence seen) => seen.Averaging.Averaging == Averaging.Sample && seen.Floor is { } floor
        && SingleLookScatter.Contradicts(floor)
        ? new Finding
        {
            Code = Code,
            Severity = Severity.Warning,
            Role = SweepRole.Floor,
            Size = new Decibels(floor.ReadingDeviationDb),
            Where = NearPlaces(seen),
            Bias = Near(seen) ? PowerForLog : null,
            Message = $"The averaging is stated as \"sample\", but the floor readings scatter by "
                + $"{Amount.Db(floor.ReadingDeviationDb)} only: {Looks(floor)} looks went into each. If power is "
                + $"averaged, values near the floor come out wrong by up to {Amount.Db(-new DetectorNoise(1).LogMeanOffset)}.",
            Basis = string.Create(Amount.Print, $"Single looks at noise scatter by {SingleLookScatter.Db:0.00} "
                + $"dB; told below {SingleLookScatter.Least(floor):0.00} dB, which so many hardly ever show by chance."),
            NextStep = "Set averaging in campaign.toml to \"power\" (RMS detector or power average) or \"log\" (log or video "
                + "average); where nobody knows, leave it out.",
        }
        : null;

    // A law for one of the two says nothing of the other.
    private Finding? Disagreeing(Evidence seen) => !seen.Averaging.Files.Disagree ? null : new Finding
    {
        Code = Code,
        Severity = seen.Averaging.Files.Meanings.Contains(Averaging.Lowest) ? Severity.Fault : Severity.Warning,
        Where = NearPlaces(seen),
        Bias = Near(seen) ? Bias.Unknown : null,
        Message = $"The files do not agree on how the receiver averaged: {ByRole(seen)}. Noise then reads otherwise in one "
            + "sweep than in the other, and values and bounds near the floor do not hold."
            + (seen.Averaging.Stated == Averaging.Unknown ? string.Empty : $" campaign.toml states "
                + $"\"{Word(seen.Averaging.Stated)}\", which cannot be true of all and was not used."),
        Basis = $"Detector, averaging and trace mode as the files word them; "
            + $"{Amount.Count(seen.Averaging.Files.Meanings.Length, "meaning", "meanings")} were found in "
            + $"{Amount.Count(seen.Campaign.Used().Count(), "sweep", "sweeps")}.",
        NextStep = "Take floor, reference and covered with one detector and one trace mode: RMS (power average), or sample, "
            + "and the trace cleared for each sweep.",
    };

    private Finding? Otherwise(Evidence seen)
    {
        (Averaging stated, Averaging files) = (seen.Averaging.Stated, seen.Averaging.Files.Alike);
        if (stated == Averaging.Unknown || files is Averaging.Unknown or Averaging.Peak or Averaging.Lowest || stated == files)
        {
            return null;
        }

        return new Finding
        {
            Code = Code,
            Severity = Near(seen) ? Severity.Warning : Severity.Note,
            Where = NearPlaces(seen),
            Bias = Near(seen) ? PowerForLog : null,
            Message = $"campaign.toml states the averaging as \"{Word(stated)}\", the files state \"{Word(files)}\" "
                + $"({Words(seen.Campaign.Used().First())})."
                + (seen.Averaging.Averaging == stated ? " What campaign.toml states was used." : string.Empty)
                + (Near(seen)
                    ? $" If the files are right, values near the floor are off by up to {Amount.Db(PowerForLog.LowerByDb)}."
                    : seen.Floor is null ? " Without a floor nobody knows how near it is."
                    : " Far from the floor, as here, it matters little."),
            Basis = $"Detector, averaging and trace mode as all "
                + $"{Amount.Count(seen.Campaign.Used().Count(), "file words", "files word")} them.",
            NextStep = "Look up how the receiver averaged, and correct or leave out averaging in campaign.toml.",
        };
    }

    private Finding? Kept(Evidence seen) => seen.Averaging switch
    {
        { Averaging: Averaging.Peak, Source: AveragingSource.Recognised } => Recognised(seen),
        { Averaging: Averaging.Peak } => Highest(seen),
        { Averaging: Averaging.Lowest } => Lowest(seen),
        _ => null,
    };

    private Finding Recognised(Evidence seen)
    {
        FloorSkewness skewness = seen.Averaging.Skewness!;
        return new Finding
        {
            Code = Code,
            Severity = Severity.Warning,
            Message = "The floor readings lean upward, as the highest of several looks does and an average does not: the "
                + "sweeps were probably taken with a peak detector, or with the trace held at its maximum. "
                + Held(seen)
                + (seen.Averaging.Stated == Averaging.Unknown ? string.Empty : $" campaign.toml states "
                    + $"\"{Word(seen.Averaging.Stated)}\", which was not used."),
            Basis = string.Create(Amount.Print, $"Skewness of the floor readings {skewness.Skewness:0.00}, "
                + $"against {skewness.OfLogAverages:0.00} at most for averages and {skewness.OfHighest:0.00} for the highest "
                + $"of several looks with the same scatter of {seen.Floor!.ReadingDeviationDb:0.00} dB; standard error "
                + $"{skewness.StandardError:0.00}, {skewness.Readings:0} independent readings. An average leans so in 1 of "
                + $"1000 floors."),
            NextStep = "Look up the detector and the trace mode. " + TakeAgain + " Where it was an average after all, "
                + "something comes and goes in the floor: take more floor sweeps and watch it.",
        };
    }

    // With an average that nobody stated averaging-unknown asks for the detector.
    private Finding? Downward(Evidence seen) =>
        seen.Averaging is
        {
            Averaging: Averaging.Power or Averaging.Log or Averaging.Sample,
            Skewness: { Shape: NoiseShape.Lowest } skewness
        }
        ? new Finding
        {
            Code = Code,
            Severity = Severity.Warning,
            Role = SweepRole.Floor,
            Biases = new SuspectedLowest(seen, seen.Floor!).Biases,
            Message = $"The averaging is stated as \"{Word(seen.Averaging.Averaging)}\", but the floor readings lean further "
                + "down than averages do, as the lowest of several would. After a minimum hold levels near the floor read too "
                + "low, and the specimen may shield less than is claimed here.",
            Basis = string.Create(Amount.Print, $"Skewness of the floor readings {skewness.Skewness:0.00}, "
                + $"against {skewness.OfPowerAverages:0.00} at least for averages with the same scatter of "
                + $"{seen.Floor!.ReadingDeviationDb:0.00} dB; standard error {skewness.StandardError:0.00}, "
                + $"{skewness.Readings:0} independent readings."),
            NextStep = "Look up the trace mode and the detector. After a minimum hold or a negative peak detector: "
                + char.ToLowerInvariant(TakeAgain[0]) + TakeAgain[1..],
        }
        : null;

    // Files that name the detector are believed: an RMS detector that dwells shortly takes one look. Where nothing but
    // campaign.toml says it, "sample" is as true of one look, and asks nobody to take an average on trust.
    private Finding? NeverAveraged(Evidence seen) =>
        seen.Averaging is { Averaging: Averaging.Power or Averaging.Log, Source: AveragingSource.Stated } stated
        && stated.Files.Alike != stated.Averaging && seen.Floor is { } floor && SingleLookScatter.Least(floor) > 0
        && SingleLookScatter.Agrees(floor) && LeansLikeSingleLooks(seen.Averaging.Skewness)
        ? NeverAveraged(seen, floor, new SuspectedLowest(seen, floor)) : null;

    // Something that comes and goes makes averages scatter as much, but leans up. Single looks lean as averages in dB would that
    // scattered by as much: both have the third cumulant of the logarithm of an exponential reading.
    private static bool LeansLikeSingleLooks(FloorSkewness? skewness) =>
        skewness is not null && skewness.Skewness - skewness.OfLogAverages < LeansUp * skewness.StandardError;

    private Finding NeverAveraged(Evidence seen, NoiseFloor floor, SuspectedLowest lowest) => new()
    {
        Code = Code,
        Severity = lowest.Weight,
        Role = SweepRole.Floor,
        Biases = lowest.Biases,
        Size = new Decibels(floor.ReadingDeviationDb),
        Message = $"The averaging is stated as \"{Word(seen.Averaging.Averaging)}\", but the floor readings scatter like single "
            + "looks, as if nothing was averaged. A minimum hold or a negative peak detector shows the same, and then the "
            + "specimen may "
            + "shield less than is claimed here; the readings cannot tell them from a sample detector."
            + lowest.MattersHere,
        Basis = string.Create(Amount.Print, $"Floor readings scatter by {floor.ReadingDeviationDb:0.00} dB, "
            + $"single looks by {SingleLookScatter.Db:0.00} dB, two looks in one reading by "
            + $"{new DetectorNoise(2).LogStandardDeviation:0.00} dB; no file states \"{Word(seen.Averaging.Averaging)}\"."),
        NextStep = "Look up the detector and the trace mode of the receiver. With a cleared trace and a sample detector, or an "
            + "RMS detector that takes one look a reading, set averaging in campaign.toml to \"sample\". After a minimum "
            + "hold or a "
            + "negative peak detector: " + char.ToLowerInvariant(TakeAgain[0]) + TakeAgain[1..],
    };

    private Finding Highest(Evidence seen) => new()
    {
        Code = Code,
        Severity = Material(seen) > 0 || Contradicted(seen) ? Severity.Warning : Severity.Note,
        Message = $"{Keeping(seen, Averaging.Peak, "the highest")}: noise then reads too high, a signal hardly does, and no "
            + $"averaging describes it. {Held(seen)}{Contradiction(seen)}",
        Basis = $"{Source(seen, Averaging.Peak)}; the highest of ten looks at noise lies {Amount.Db(PeakHold.BiasDb(10))} "
            + "above its power, and the signal between the reading less the floor, as voltages, and the reading.",
        NextStep = TakeAgain,
    };

    private Finding Lowest(Evidence seen) => new()
    {
        Code = Code,
        Severity = Severity.Fault,
        // The ends of the intervals reckon with it, where there is a floor.
        Bias = seen.Floor is null ? Bias.Unknown : default(Bias),
        Message = $"{Keeping(seen, Averaging.Lowest, "the lowest")}: noise then reads far too low, a signal near it too, and "
            + "nothing in the sweeps shows by how much. "
            + (seen.Floor is null ? "Without a floor the bounds do not hold." : $"Bounds reckon with the lowest of "
                + $"{HeldNoise.MostLooksUnseen:0} looks and are low for it.") + Contradiction(seen),
        Basis = $"{Source(seen, Averaging.Lowest)}; the lowest of N looks at noise reads like one look at an N-th of its power.",
        NextStep = TakeAgain,
    };

    // What the law of the kept look did to the readings.
    private static string Held(Evidence seen) =>
        seen.Floor is null ? "Without a floor only bounds are given, and they allow for it."
        : Material(seen) is > 0 and var moved
        ? $"How noise and signal add up is not known, so the intervals hold from no noise in a reading to all that the floor "
            + $"shows: that matters at {Amount.OutOf(moved, seen.Curves.Sum(c => c.Readings.Length))}."
        : "Far from the floor, as here, it matters little.";

    private static int Material(Evidence seen) => seen.Curves.Sum(c => Enumerable.Range(0, c.Readings.Length).Count(f =>
        Moved(c, f)));

    private static bool Moved(ShieldingCurve curve, int f) =>
        curve.Readings[f].State == ShieldingState.Capped
            || curve.Spread?.AveragingShift(f) >= MaterialDb;

    private static bool Near(Evidence seen) =>
        seen.Curves.Any(c => c.Readings.Any(IsNear));

    // What a reading near the floor is off by where power is taken for log averaging, or the other way round.
    private static Bias PowerForLog { get; } = new(-new DetectorNoise(1).LogMeanOffset, -new DetectorNoise(1).LogMeanOffset);

    private static ImmutableArray<FrequencyBand> NearPlaces(Evidence seen) => Near(seen)
        ? Stretches.Where(seen.Campaign.Grid, f => seen.Curves.Any(c => IsNear(c.Readings[f]))) : [];

    private static bool IsNear(ShieldingReading reading) => reading.State is ShieldingState.NearFloor or ShieldingState.Capped;

    private static bool Contradicted(Evidence seen) =>
        seen.Averaging.Source == AveragingSource.Files && seen.Averaging.Stated != Averaging.Unknown
            && seen.Averaging.Stated != seen.Averaging.Averaging;

    private static string Contradiction(Evidence seen) =>
        Contradicted(seen) ? $" campaign.toml states \"{Word(seen.Averaging.Stated)}\"; the files go before it." : string.Empty;

    private static string Keeping(Evidence seen, Averaging kept, string which)
    {
        List<Sweep> sweeps = Stating(seen, kept);
        return sweeps.Count == 0 ? $"The sweeps keep {which} of several readings"
            : $"{Amount.Count(sweeps.Count, "sweep keeps", "sweeps keep")} {which} of several readings ({Words(sweeps[0])})";
    }

    private static string Source(Evidence seen, Averaging kept) => Stating(seen, kept) is [var first, .. var more]
        ? string.Create(Amount.Print, $"Stated in "
            + $"{first.Name}{(more.Count > 0 ? $" and {more.Count} more" : string.Empty)}")
        : "Stated in campaign.toml";

    private static List<Sweep> Stating(Evidence seen, Averaging meaning) =>
        [.. seen.Campaign.Used().Where(s => DetectorWords.Of(s.Settings) == meaning)];

    private static string ByRole(Evidence seen) => string.Join(", ", seen.Campaign.Used()
        .Where(s => DetectorWords.Of(s.Settings) != Averaging.Unknown).GroupBy(s => s.Role).OrderBy(g => g.Key)
        .Select(g => $"{g.Key.ToString().ToLowerInvariant()} {string.Join(" and ", g.Select(Words).Distinct())}"));

    private static string Words(Sweep sweep) =>
        string.Join(", ", new[] { sweep.Settings.Detector, sweep.Settings.Averaging, sweep.Settings.TraceMode }.Where(word =>
            !string.IsNullOrWhiteSpace(word)));

    private static string Word(Averaging averaging) => averaging.ToString().ToLowerInvariant();

    private static string Looks(NoiseFloor floor)
    {
        double looks = DetectorNoise.LooksFor(floor.ReadingDeviationDb);
        return looks > MostLooks ? $"more than {MostLooks}" : looks < LeastLooks ? "more than one"
            : string.Create(Amount.Print, $"about {looks:0}");
    }
}
