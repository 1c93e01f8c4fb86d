using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Nobody knows how low the receiver can read, so a small covered level may be its own noise.</summary>
internal sealed class NoFloor : ICheck
{
    /// <inheritdoc/>
    public string Code => "no-floor";

    private static string None(UnreadFiles? unread) =>
        unread is null ? "No floor sweep is in use" : $"No floor sweep is in use, since {unread.Told},";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        UnreadFiles? unread = UnreadFiles.Of(seen.Campaign.Unread, SweepRole.Floor);
        if (seen.Floor is null)
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Warning,
                Role = SweepRole.Floor,
                Message = $"{(seen.FloorLife is null ? None(unread) : "The floor sweeps show no noise")} and no floor is "
                    + "declared: what looks like a weak signal may be the receiver's own noise, so every shielding value is "
                    + "only a lower bound.",
                Basis = "0 floor sweeps in use"
                    + $"{(seen.FloorLife is { } life ? $", {life.ReadingCount} readings without noise left out" : string.Empty)}"
                    + "; declared_dbm is not set.",
                NextStep = unread is not null && seen.FloorLife is null ? unread.Mend
                    : "Switch the source off (or terminate the input), leave all receiver settings as they are and take at "
                        + "least three floor sweeps.",
            };
        }
        else if (seen.Floor.Source == FloorSource.Declared)
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Warning,
                Role = SweepRole.Floor,
                Message = "The floor is declared, not measured: it is taken to be right to "
                    + $"{Amount.Db(NoiseFloorEstimator.DeclaredHalfWidthDb)}, and near it the intervals are as wide as that "
                    + "makes them.",
                Basis = string.Create(Amount.Print,
                    $"0 floor sweeps in use; declared {seen.Floor.LevelDb[0]:0.##} {seen.Campaign.Scale.Symbol()}."),
                NextStep = unread?.Mend ?? "Take at least three floor sweeps: source off, all receiver settings as they are.",
            };
        }
    }
}
