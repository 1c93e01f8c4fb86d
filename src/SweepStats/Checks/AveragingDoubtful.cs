using System.Globalization;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>The sweeps contradict what is stated of the averaging, or were taken in a way no averaging describes.</summary>
internal sealed class AveragingDoubtful : ICheck
{
    // Single looks scatter by 5.57 dB whatever the receiver; two looks in one reading by 3.5 dB: about half way there.
    private const double LeastOfSingleLooks = 0.8;

    // Readings of so many looks scatter by less than most displays show.
    private const double MostLooks = 1000;

    public string Code => "averaging-doubtful";

    public string? UntestedBecause(Evidence seen) =>
        seen.Campaign.Used().Any(s => s.Settings.TraceMode is not null || s.Settings.Detector is not null) ? null
            : "the files state no detector and no trace mode"
                + (seen.Averaging == Averaging.Sample && seen.Floor is { Source: FloorSource.Measured } floor && Least(floor) > 0 ? "; the scatter of the floor was looked at" : string.Empty);

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Averaging == Averaging.Sample && seen.Floor is { Source: FloorSource.Measured } floor && floor.ReadingDeviationDb < Least(floor))
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Warning,
                Role = SweepRole.Floor,
                Size = new Decibels(floor.ReadingDeviationDb),
                Message = $"The averaging is stated as \"sample\", but the floor readings scatter by {Amount.Db(floor.ReadingDeviationDb)} only: {Looks(floor)} looks are averaged into each. If power is averaged, values near the floor come out wrong by up to {Amount.Db(-new DetectorNoise(1).LogMeanOffset)}.",
                Basis = string.Create(CultureInfo.InvariantCulture, $"Single looks at noise scatter by {SingleLookScatter.Db:0.00} dB; told below {Least(floor):0.00} dB, which so many hardly ever show by chance."),
                NextStep = "Set averaging in campaign.toml to \"power\" (RMS detector or power average) or \"log\" (log or video average); where nobody knows, leave it out.",
            };
        }

        List<Sweep> highest = [.. seen.Campaign.Used().Where(KeepsTheHighest)];
        if (highest.Count > 0)
        {
            bool matters = seen.Curves.Any(c => c.Readings.Any(r => r.State is ShieldingState.NearFloor or ShieldingState.Capped));
            yield return new Finding
            {
                Code = Code,
                Severity = matters ? Severity.Warning : Severity.Note,
                Message = $"{Amount.Count(highest.Count, "sweep keeps", "sweeps keep")} the highest of several readings ({highest[0].Settings.TraceMode ?? highest[0].Settings.Detector}): noise then reads too high, a signal hardly does, and no averaging describes it."
                    + (matters ? " Values and bounds near the floor do not hold." : " Far from the floor, as here, it matters little."),
                Basis = string.Create(CultureInfo.InvariantCulture, $"Stated in {highest[0].Name}{(highest.Count > 1 ? $" and {highest.Count - 1} more" : string.Empty)}; the highest of ten looks at noise lies {PeakHold.BiasDb(10):0.0} dB above its power."),
                NextStep = "Take all sweeps again with an RMS (power average) detector or a sample detector, and the trace cleared for each sweep.",
            };
        }
    }

    private static double Least(NoiseFloor floor) => Math.Min(LeastOfSingleLooks * SingleLookScatter.Db, SingleLookScatter.Limits(floor).Low);

    private static string Looks(NoiseFloor floor)
    {
        double looks = DetectorNoise.LooksFor(floor.ReadingDeviationDb);
        return looks > MostLooks ? $"more than {MostLooks}" : string.Create(CultureInfo.InvariantCulture, $"about {looks:0}");
    }

    private static bool KeepsTheHighest(Sweep sweep) =>
        Says(sweep.Settings.TraceMode, "max") || (Says(sweep.Settings.Detector, "peak") && !Says(sweep.Settings.Detector, "neg") && !Says(sweep.Settings.Detector, "quasi"));

    private static bool Says(string? setting, string word) => setting?.Contains(word, StringComparison.OrdinalIgnoreCase) == true;
}
