using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// Power and log averaging read noise differently; without knowing which, intervals near the floor hold both. A kept look is
/// something else again.
/// </summary>
/// <remarks>
/// Where the floor readings lean as averages do, a note is enough. Where they do not tell, a peak detector or a minimum hold may
/// be behind them, for which the intervals do not hold; then the detector has to be asked for.
/// </remarks>
internal sealed class AveragingUnknown : ICheck
{
    /// <inheritdoc/>
    public string Code => "averaging-unknown";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => Lacking.Floor(seen);

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        // Voltages with phase have no detector and are not held: one look is what it seems to be.
        bool single = seen.Floor is { } known && SingleLookScatter.Agrees(known);
        if (seen.Campaign.Floor is { HasPhases: true } && single)
        {
            yield break;
        }

        if (seen.Floor is { } floor && seen.Averaging.Averaging == Averaging.Unknown)
        {
            yield return single ? LikeSingleLooks(floor, new SuspectedLowest(seen, floor))
                : seen.Averaging.Skewness?.Shape switch
                {
                    NoiseShape.Averages => Average(floor),
                    NoiseShape.Lowest => LikeTheLowest(seen, floor, new SuspectedLowest(seen, floor)),
                    _ => Untold(seen, floor),
                };
        }
    }

    private Finding Average(NoiseFloor floor) => new()
    {
        Code = Code,
        Severity = Severity.Note,
        Message = "How the receiver averages is not known for certain: intervals near the floor are wide enough for power "
            + "averaging and for log averaging.",
        Basis = Scatter(floor),
        NextStep = "Set averaging in campaign.toml to \"power\" (RMS detector or power average), \"log\" (log or video "
            + "average) or \"sample\"; intervals near the floor become narrower.",
    };

    private Finding LikeSingleLooks(NoiseFloor floor, SuspectedLowest lowest) => new()
    {
        Code = Code,
        Severity = lowest.Weight,
        Biases = lowest.Biases,
        Message = "The detector is not known for certain, and the floor scatters like single looks. That is what a sample "
            + "detector shows, "
            + "and the intervals hold for it. A minimum hold or a negative peak detector shows the same, and then the specimen "
            + "may shield less than is claimed here; the readings cannot tell the two apart." + lowest.MattersHere,
        Basis = string.Create(Amount.Print, $"Floor readings scatter by {floor.ReadingDeviationDb:0.00} dB, "
            + $"single looks by {SingleLookScatter.Db:0.00} dB; the lowest of several looks at noise is distributed as a "
            + $"single look at less noise."),
        NextStep = "Look up the detector and the trace mode of the receiver. With a sample detector and a cleared trace set "
            + "averaging in campaign.toml to \"sample\". After a minimum hold or a negative peak detector take all sweeps "
            + "again with an RMS or a sample detector.",
    };

    private Finding LikeTheLowest(Evidence seen, NoiseFloor floor, SuspectedLowest lowest) => new()
    {
        Code = Code,
        Severity = lowest.Weight,
        Biases = lowest.Biases,
        Message = "The detector is not known for certain, and the floor readings lean further down than averages do, as the "
            + "lowest of several "
            + "would: after a minimum hold or a negative peak detector the specimen may shield less than is claimed here."
            + lowest.MattersHere,
        Basis = Scatter(floor) + Why(seen.Averaging.Skewness),
        NextStep = Ask("a minimum hold or a negative peak detector"),
    };

    private Finding Untold(Evidence seen, NoiseFloor floor) => new()
    {
        Code = Code,
        Severity = Near(seen) ? Severity.Warning : Severity.Note,
        Message = "The detector is not known for certain, and the floor does not tell it: intervals near the floor are wide "
            + "enough for power "
            + "averaging and for log averaging, but not for a peak or quasi-peak detector or a held trace.",
        Basis = Scatter(floor) + Why(seen.Averaging.Skewness),
        NextStep = Ask("a peak or quasi-peak detector or a held trace"),
    };

    private static string Ask(string unfit) => "Look up the detector and the trace mode of the receiver, and set averaging in "
        + "campaign.toml to \"power\" (RMS detector or power average), \"log\" (log or video average) or \"sample\". After "
        + $"{unfit} take all sweeps again with an RMS or a sample detector.";

    private static string Scatter(NoiseFloor floor) => floor.Source == FloorSource.Declared
        ? "A declared floor has no scatter to tell by: a single look and endless averaging are both "
            + "reckoned with."
        : string.Create(Amount.Print, $"Floor readings scatter by "
            + $"{floor.ReadingDeviationDb:0.00} dB, which is {floor.Noise[0].Looks:0.#} looks averaged in power or "
            + $"{floor.Noise[^1].LogAverages:0.#} averaged in dB.");

    private static string Why(FloorSkewness? skewness) => skewness switch
    {
        null => string.Empty,
        { Skewness: double.NaN } => string.Create(Amount.Print, $" {skewness.Readings:0} independent readings "
            + $"do not show how they lean."),
        _ => string.Create(Amount.Print, $" Their skewness is {skewness.Skewness:0.00} with a standard error "
            + $"of {skewness.StandardError:0.00}; averages with this scatter have {skewness.OfLogAverages:0.00}, the highest "
            + $"of several looks {skewness.OfHighest:0.00}, and where looks are smoothed anything between."),
    };

    private static bool Near(Evidence seen) =>
        seen.Curves.Any(c => c.Readings.Any(r => r.State is ShieldingState.NearFloor or ShieldingState.Capped));
}
