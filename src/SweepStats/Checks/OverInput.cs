using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Levels above what the receiver is stated to show without error.</summary>
internal sealed class OverInput : ICheck
{
    /// <inheritdoc/>
    public string Code => "over-input";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) =>
        seen.MaximumInputDbm is null ? "no maximum input level is stated (max_input_dbm)" : Lacking.Milliwatts(seen);

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.MaximumInputDbm is not { } most || seen.Campaign.Scale != LevelScale.DecibelMilliwatts || seen.Curves.IsEmpty)
        {
            yield break;
        }

        var reference = seen.Curves[0].Readings;
        int count = reference.Count(r => r.Evidence.ReferenceDb > most);
        if (count > 0)
        {
            double over = reference.Max(r => r.Evidence.ReferenceDb) - most;
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Fault,
                Role = SweepRole.Reference,
                Where = Stretches.Where(seen.Campaign.Grid, f => reference[f].Evidence.ReferenceDb > most),
                Size = new Decibels(over),
                Message = $"At {Amount.OutOf(count, reference.Length)} the reference lies above the stated maximum input, by up "
                    + $"to {Amount.Db(over)}: an overloaded receiver reads too low, so the shielding there is at least what is "
                    + "shown, where the specimen lets less through than arrives without it.",
                Basis = string.Create(Amount.Print, $"Highest reference level {reference.Max(r => r.Evidence.ReferenceDb):0.0} "
                    + $"dBm, the mean of {Amount.Count(seen.Campaign.Reference.SweepCount, "sweep", "sweeps")}, against a "
                    + $"stated maximum of {most:0.##} dBm."),
                Bias = Checks.Bias.TooSmall,
                NextStep = LostSign.Of(SweepRole.Reference, seen) is [var lost, ..] ? lost.NextStep
                    : WrongUnit.IsLikely(SweepRole.Reference, seen) ? WrongUnit.NextStep(seen)
                    : $"Put {Math.Ceiling(over):0} dB more attenuation before the receiver, or turn the source down, and "
                        + "take all sweeps again.",
            };
        }
    }
}
