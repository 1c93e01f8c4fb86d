using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Levels of a kind of sweeps that lost their minus sign, as an export or a copy by hand may lose it.</summary>
/// <remarks>
/// Floor and covered sweeps never read far above the reference. Where they do, all levels are positive, and with a minus sign
/// everything has its order again, the sign is what is wrong. A reference without its sign has the order that it should have:
/// there only its height tells, so that it is asked about and no fault. A single placement is looked at beside the others
/// (<see cref="PlacementOff"/>).
/// </remarks>
internal sealed class LostSign : ICheck
{
    // A hundred times the power (judgement, no source).
    private const double FarDb = 20;

    // 100 mW at a receiver, or a hundred times what was sent: some benches amplify, none so in all of a band (judgement, no
    // source).
    private const double HighestDb = 20;

    // As far as a specimen that shields nothing may read above the reference.
    private const double SlackDb = 3;

    public string Code => "lost-sign";

    public string? UntestedBecause(Evidence seen) =>
        HasSigns(seen) ? null : $"levels in {seen.Campaign.Scale.Symbol()} are above zero anyway";

    /// <summary>Whether some levels look so.</summary>
    public static bool IsLikely(Evidence seen) => new LostSign().Inspect(seen).Any();

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (!HasSigns(seen) || Kinds(seen.Campaign) is var kinds && !kinds.Any(k => k.IsPositive))
        {
            return [];
        }

        Kind reference = kinds.Single(k => k.Role == SweepRole.Reference);
        Kind[] others = [.. kinds.Where(k => k.Role != SweepRole.Reference)];
        bool isInOrderThen = others.All(k => k.WithSignDb <= reference.WithSignDb + SlackDb);
        return !isInOrderThen ? []
            : others.Any(k => k.IsPositive && k.LevelDb - reference.LevelDb >= FarDb)
            ? kinds.Where(k => k.IsPositive).Select(k => Told(seen, k, Severity.Fault))
            : IsTooHigh(seen, reference) && others.All(k => k.IsNegative) ? [Told(seen, reference, Severity.Warning)] : [];
    }

    private static bool HasSigns(Evidence seen) => seen.Campaign.Scale is LevelScale.DecibelMilliwatts or LevelScale.DecibelRatio;

    private static bool IsTooHigh(Evidence seen, Kind reference) =>
        reference.IsPositive && (reference.LevelDb >= HighestDb || reference.LevelDb > seen.SourceDbm + SlackDb);

    private static Kind[] Kinds(AlignedCampaign campaign) =>
    [
        .. campaign.Floor is { } floor ? [Kind.Of(SweepRole.Floor, null, floor)] : Array.Empty<Kind>(),
        Kind.Of(SweepRole.Reference, null, campaign.Reference),
        .. campaign.Covered.Select(c => Kind.Of(SweepRole.Covered, c.Name, c.Block)),
    ];

    private Finding Told(Evidence seen, Kind kind, Severity severity)
    {
        string named = kind.Specimen?.ToString() ?? $"the {kind.Role.ToString().ToLowerInvariant()}";
        string Level(double db) => string.Create(Amount.Print, $"{db:0.0} {seen.Campaign.Scale.Symbol()}");
        return new Finding
        {
            Code = Code,
            Severity = severity,
            Role = kind.Role,
            Specimen = kind.Specimen,
            Size = new Decibels(2 * kind.LevelDb),
            Bias = Bias.Unknown,
            Misleads = true,
            Message = $"The levels of {named} look as if they lost their minus sign: {Level(kind.LevelDb)} on average, "
                + $"where {Level(-kind.LevelDb)} would have its place among the others.",
            Basis = severity == Severity.Fault
                ? $"All levels of it are above zero, and floor or covered sweeps read {Amount.Db(FarDb)} or more above the "
                    + "reference. With the sign none does."
                : $"All levels of it are above zero, those of all others below; told from {Level(HighestDb)} on, or above what "
                    + "the source sends.",
            NextStep = $"Give the levels of {named} their minus sign again, as the display showed them"
                + $"{(seen.Campaign.Scale == LevelScale.DecibelMilliwatts ? ", or dBµV as their unit if they are in dBµV" : "")}, "
                + "or take the sweeps again.",
        };
    }

    private sealed record Kind(SweepRole Role, SpecimenName? Specimen, double LevelDb, bool IsPositive, bool IsNegative)
    {
        public double WithSignDb => IsPositive ? -LevelDb : LevelDb;

        public static Kind Of(SweepRole role, SpecimenName? specimen, SweepBlock block) =>
            new(role, specimen, Sample.Mean(block.Means().AsSpan()), block.LowestDb > 0, block.HighestDb < 0);
    }
}
