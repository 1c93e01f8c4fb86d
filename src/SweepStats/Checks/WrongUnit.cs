using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// Levels that hardly any receiver survives, or that lie far below what its input gives off: their unit is another than the one
/// that is given.
/// </summary>
/// <remarks>
/// Levels in dBµV read 107 dB higher than in dBm, and whoever mixes the two adds 107 dB to the shielding or takes them off. It is
/// asked and no fault is told: levels that were calculated for a place before an attenuator may be right, and so may those that a
/// gain was taken off. A single sweep that lies 107 dB from its repeats is a fault. A role whose levels look as if they lost
/// their sign is left to that (<see cref="LostSign"/>), which asks for the unit too.
/// </remarks>
internal sealed class WrongUnit : ICheck
{
    /// <summary>How much higher a level at 50 Ω reads in dBµV than in dBm: 10·lg(10⁻³ W · 50 Ω / 10⁻¹² V²).</summary>
    public const double OfMicrovoltsDb = 107;

    // 1 W, at which usual inputs are damaged (common practice, no source).
    private const double DamageDbm = 30;

    // What noise figure, calibration and a bandwidth that is stated somewhat wrongly make up (judgement, no source); a gain that
    // was taken off may be more, and is asked about.
    private const double FarBelowDb = 20;

    // More of them are a list that nobody reads.
    private const int MostNamed = 3;

    /// <inheritdoc/>
    public string Code => "wrong-unit";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => Lacking.Milliwatts(seen);

    /// <summary>Whether levels of a role lie too low for any input.</summary>
    public static bool IsTooLow(SweepRole role, Evidence seen) => Array.Exists(TooLow(seen), k => k.Role == role);

    /// <summary>Whether levels of a role lie so high.</summary>
    public static bool IsLikely(SweepRole role, Evidence seen) => Array.Exists(TooHigh(seen), k => k.Role == role);

    /// <summary>What to do about it, in every finding that it would mislead.</summary>
    public static string NextStep(Evidence seen) => $"Look whether the levels of {Named(TooHigh(seen))} are in dBm: "
        + $"in dBµV they read {OfMicrovoltsDb:0} dB higher. Correct the unit in the files, or level_unit under [setup] in "
        + "campaign.toml. "
        + (seen.MaximumInputDbm is null ? "If they are right, state max_input_dbm there."
            : "If they are right, put more attenuation before the receiver and take all sweeps again.");

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (TooHigh(seen) is { Length: > 0 } high)
        {
            yield return Told(seen, high);
        }

        if (TooLow(seen) is { Length: > 0 } low)
        {
            yield return ToldLow(seen, low);
        }

        foreach (MixedUnit mixed in MixedUnit.In(seen))
        {
            yield return mixed.Told(Code);
        }
    }

    private Finding Told(Evidence seen, KindLevel[] high)
    {
        double most = high.Max(k => k.LevelDbm);
        return Asked(high) with
        {
            Size = new Decibels(most - Highest(seen)),
            Message = string.Create(Amount.Print, $"The unit of {Named(high)} looks wrong: {(high.Length > 1 ? "up to " : "")}"
                + $"{most:0.0} dBm on average, more than a usual input survives."),
            Basis = "Means over all frequencies and sweeps of a kind; told above "
                + Amount.Dbm(Highest(seen))
                + (seen.MaximumInputDbm > DamageDbm ? ", the stated maximum input." : ", at which usual inputs are damaged."),
            NextStep = NextStep(seen),
        };
    }

    private Finding ToldLow(Evidence seen, KindLevel[] low)
    {
        double least = low.Min(k => k.LevelDbm), limit = ThermalLimit.Of(seen)!.Value.LevelDbm;
        return Asked(low) with
        {
            Size = new Decibels(least - limit),
            Message = string.Create(Amount.Print, $"The unit of {Named(low)} looks wrong: {(low.Length > 1 ? "down to " : "")}"
                + $"{least:0.0} dBm on average, {limit - least:0} dB below the noise that any input gives off."),
            Basis = $"Means over all frequencies and sweeps of a kind; told from {FarBelowDb:0} dB below "
                + $"{ThermalLimit.Of(seen)!.Value.Told} on.",
            NextStep = $"Look whether the levels of {Named(low)} were in dBm from the start: taken for dBµV they come out "
                + $"{OfMicrovoltsDb:0} dB lower. Correct the unit in the files, or level_unit under [setup] in campaign.toml. "
                + "If a gain was taken off the levels, put it back.",
        };
    }

    private Finding Asked(KindLevel[] kinds) => new()
    {
        Code = Code,
        Severity = Severity.Warning,
        Role = Array.TrueForAll(kinds, k => k.Role == kinds[0].Role) ? kinds[0].Role : null,
        Specimen = kinds.Length == 1 ? kinds[0].Specimen : null,
        Bias = Bias.Unknown,
        Misleads = true,
        Message = string.Empty,
        Basis = string.Empty,
        NextStep = string.Empty,
    };

    private static double Highest(Evidence seen) => Math.Max(DamageDbm, seen.MaximumInputDbm ?? double.NegativeInfinity);

    private static KindLevel[] TooHigh(Evidence seen) => seen.Campaign.Scale != LevelScale.DecibelMilliwatts ? []
        : [.. Kinds(seen.Campaign).Where(k => k.LevelDbm > Highest(seen)).GroupBy(k => k.Role)
            .Where(role => LostSign.Of(role.Key, seen).IsEmpty).SelectMany(role => role)];

    private static KindLevel[] TooLow(Evidence seen) => ThermalLimit.Of(seen) is not { } limit ? []
        : [.. Kinds(seen.Campaign).Where(k => k.LevelDbm < limit.Of(k.Role, seen) - FarBelowDb)];

    private static IEnumerable<KindLevel> Kinds(AlignedCampaign campaign) =>
    [
        KindLevel.Of(SweepRole.Reference, null, campaign.Reference),
        .. campaign.Covered.Select(c => KindLevel.Of(SweepRole.Covered, c.Name, c.Block)),
        .. campaign.Floor is { } floor ? [KindLevel.Of(SweepRole.Floor, null, floor)] : Array.Empty<KindLevel>(),
    ];

    private static string Named(KindLevel[] kinds)
    {
        string[] specimens = [.. kinds.Where(k => k.Specimen is not null).Select(k => k.Specimen!.Value.ToString())];
        string[] named =
        [
            .. kinds.Where(k => k.Specimen is null).Select(k => $"the {k.Role.ToString().ToLowerInvariant()}"),
            .. specimens.Length > MostNamed ? [Amount.Count(specimens.Length, "specimen", "specimens")] : specimens,
        ];
        return named.Length == 1 ? named[0] : $"{string.Join(", ", named[..^1])} and {named[^1]}";
    }

    /// <summary>A kind of sweeps and how high it reads on average.</summary>
    private sealed record KindLevel(SweepRole Role, SpecimenName? Specimen, double LevelDbm)
    {
        /// <summary>All sweeps of a block: the mean of their means over all frequencies.</summary>
        public static KindLevel Of(SweepRole role, SpecimenName? specimen, SweepBlock block) =>
            new(role, specimen, Sample.Mean(block.Means().AsSpan()));
    }
}
