using SweepStats.Linearity;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Whether the receiver follows the level up to that of the reference has not been tested.</summary>
internal sealed class LinearityUntested : ICheck
{
    /// <inheritdoc/>
    public string Code => "linearity-untested";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        var taken = Taken.Of(seen);
        if (seen.Linearity is not null && taken.ReferenceKnown)
        {
            yield break;
        }

        yield return new Finding
        {
            Code = Code,
            Severity = Severity.Note,
            Message = (WithinMaximum(seen) ? "Overload was tested against the stated maximum input only. "
                    : "Whether the receiver was overloaded by the reference was not tested. ")
                + "An overloaded receiver reads too low, and the shielding comes out too small." + Unusable(taken),
            Basis = Basis(taken),
            NextStep = taken.Sweeps == 0 && UnreadFiles.Of(seen.Campaign.Unread, SweepRole.Linearity) is { } unread ? unread.Mend
                : NextStep(seen, taken),
        };
    }

    private static string Unusable(Taken taken) => taken switch
    {
        { Sweeps: 0 } => string.Empty,
        { Levels: 0 } => " Linearity sweeps are there, but nothing says at which source levels they were taken.",
        { ReferenceKnown: false } => " Linearity sweeps are there with their source levels, but nothing says at which source "
            + "level the reference was taken.",
        _ => " Linearity sweeps are there, but not at another source level than the reference's, on the frequencies of the "
            + "other sweeps and clear of the noise.",
    };

    // The reference was held against what the receiver is stated to stand.
    private static bool WithinMaximum(Evidence seen) => seen.MaximumInputDbm is not null && Lacking.Milliwatts(seen) is null;

    private static string NextStep(Evidence seen, Taken taken) => taken switch
    {
        { Sweeps: > 0, Levels: 0 } => "Write the source level of each linearity sweep into sweeps.csv, column source_dbm.",
        { Sweeps: > 0, ReferenceKnown: false } =>
            "Write the source level of the reference into campaign.toml, [setup] source_dbm, or of each reference sweep into "
                + "sweeps.csv, column source_dbm.",
        _ when seen.Campaign.Scale == LevelScale.DecibelRatio =>
            "Lower the port power by 10 dB and look at the reference: a ratio must stay the same. If it rises, put attenuation "
                + "before the receiver.",
        _ => "Step the source down by 10 dB and take these sweeps as linearity sweeps, with their source_dbm: the level must "
            + "follow by 10 dB. "
            + "If it does not, put attenuation before the receiver.",
    };

    private static string Basis(Taken taken) => string.Create(Amount.Print,
        $"{Amount.Count(taken.Sweeps, "linearity sweep", "linearity sweeps")} at "
        + $"{Amount.Count(taken.Levels, "stated source level", "stated source levels")}, the reference's "
        + $"{(taken.ReferenceKnown ? "stated" : "not stated")}; "
        + $"one level of linearity sweeps beside that of the reference is needed.");

    /// <summary>What there is to test with.</summary>
    private sealed record Taken(int Sweeps, int Levels, bool ReferenceKnown)
    {
        /// <summary>Counts linearity sweeps that were set aside, and the different source levels stated for them.</summary>
        public static Taken Of(Evidence seen)
        {
            Sweep[] sweeps = [.. seen.Campaign.SetAside.Where(s => s.Role == SweepRole.Linearity)];
            int levels = sweeps.Where(s => s.SourceDbm is not null).Select(s => s.SourceDbm).Distinct().Count();
            return new Taken(sweeps.Length, levels, ReferenceSource.IsKnown(seen.Campaign, seen.SourceDbm));
        }
    }
}
