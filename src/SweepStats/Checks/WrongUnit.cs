using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Levels that hardly any receiver survives: their unit is another than the one that is given.</summary>
/// <remarks>
/// Levels in dBµV read 107 dB higher than in dBm, and whoever mixes the two adds 107 dB to the shielding or takes them off. It is
/// asked and no fault is told: levels that were calculated for a place before an attenuator may be right. A role whose levels
/// look as if they lost their sign is left to that (<see cref="LostSign"/>), which asks for the unit too.
/// </remarks>
internal sealed class WrongUnit : ICheck
{
    /// <summary>How much higher a level at 50 Ω reads in dBµV than in dBm: 10·lg(10⁻³ W · 50 Ω / 10⁻¹² V²).</summary>
    public const double OfMicrovoltsDb = 107;

    // 1 W, at which usual inputs are damaged (common practice, no source).
    private const double DamageDbm = 30;

    // More of them are a list that nobody reads.
    private const int MostNamed = 3;

    public string Code => "wrong-unit";

    public string? UntestedBecause(Evidence seen) => Lacking.Milliwatts(seen);

    /// <summary>Whether levels of a role lie so high.</summary>
    public static bool IsLikely(SweepRole role, Evidence seen) => Array.Exists(TooHigh(seen), k => k.Role == role);

    /// <summary>What to do about it, in every finding that it would mislead.</summary>
    public static string NextStep(Evidence seen) => $"Look whether the levels of {Named(TooHigh(seen))} are in dBm: "
        + $"in dBµV they read {OfMicrovoltsDb:0} dB higher. Correct the unit in the files, or level_unit under [setup] in "
        + "campaign.toml. "
        + (seen.MaximumInputDbm is null ? "If they are right, state max_input_dbm there."
            : "If they are right, put more attenuation before the receiver and take all sweeps again.");

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (TooHigh(seen) is not { Length: > 0 } high)
        {
            yield break;
        }

        double most = high.Max(k => k.LevelDbm);
        yield return new Finding
        {
            Code = Code,
            Severity = Severity.Warning,
            Role = Array.TrueForAll(high, k => k.Role == high[0].Role) ? high[0].Role : null,
            Specimen = high.Length == 1 ? high[0].Specimen : null,
            Size = new Decibels(most - Highest(seen)),
            Bias = Bias.Unknown,
            Misleads = true,
            Message = string.Create(Amount.Print, $"The unit of {Named(high)} looks wrong: {(high.Length > 1 ? "up to " : "")}"
                + $"{most:0.0} dBm on average, more than a usual input survives."),
            Basis = "Means over all frequencies and sweeps of a kind; told above "
                + Amount.Dbm(Highest(seen))
                + (seen.MaximumInputDbm > DamageDbm ? ", the stated maximum input." : ", at which usual inputs are damaged."),
            NextStep = NextStep(seen),
        };
    }

    private static double Highest(Evidence seen) => Math.Max(DamageDbm, seen.MaximumInputDbm ?? double.NegativeInfinity);

    private static HighKind[] TooHigh(Evidence seen) => seen.Campaign.Scale != LevelScale.DecibelMilliwatts ? []
        : [.. Kinds(seen.Campaign).Where(k => k.LevelDbm > Highest(seen)).GroupBy(k => k.Role)
            .Where(role => LostSign.Of(role.Key, seen).IsEmpty).SelectMany(role => role)];

    private static IEnumerable<HighKind> Kinds(AlignedCampaign campaign) =>
    [
        HighKind.Of(SweepRole.Reference, null, campaign.Reference),
        .. campaign.Covered.Select(c => HighKind.Of(SweepRole.Covered, c.Name, c.Block)),
        .. campaign.Floor is { } floor ? [HighKind.Of(SweepRole.Floor, null, floor)] : Array.Empty<HighKind>(),
    ];

    private static string Named(HighKind[] kinds)
    {
        string[] specimens = [.. kinds.Where(k => k.Specimen is not null).Select(k => k.Specimen!.Value.ToString())];
        string[] named =
        [
            .. kinds.Where(k => k.Specimen is null).Select(k => $"the {k.Role.ToString().ToLowerInvariant()}"),
            .. specimens.Length > MostNamed ? [Amount.Count(specimens.Length, "specimen", "specimens")] : specimens,
        ];
        return named.Length == 1 ? named[0] : $"{string.Join(", ", named[..^1])} and {named[^1]}";
    }

    /// <summary>A kind of sweeps and how high it reads.</summary>
    private sealed record HighKind(SweepRole Role, SpecimenName? Specimen, double LevelDbm)
    {
        public static HighKind Of(SweepRole role, SpecimenName? specimen, SweepBlock block) =>
            new(role, specimen, Sample.Mean(block.Means().AsSpan()));
    }
}
