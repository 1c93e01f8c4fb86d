using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Levels of a kind of sweeps that lost their minus sign, as an export or a copy by hand may lose it.</summary>
/// <remarks>
/// Floor and covered sweeps never read far above the reference. Where they do, all levels are positive, and with a minus sign
/// everything has its order again, the sign is what is wrong. A reference without its sign has the order that it should have:
/// there only its height tells, so that it is asked about and no fault. A single sweep is held against those that repeat it, a
/// single placement against the others (<see cref="PlacementOff"/>).
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

    // As near as the levels of a sweep come to those that repeat it, once it has its sign again.
    private const double AlikeDb = 3;

    /// <inheritdoc/>
    public string Code => "lost-sign";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) =>
        HasSigns(seen) ? null : $"levels in {seen.Campaign.Scale.Symbol()} are above zero anyway";

    /// <summary>What is found among the sweeps of a role; empty where they look right.</summary>
    public static ImmutableArray<Finding> Of(SweepRole role, Evidence seen) =>
        [.. new LostSign().Inspect(seen).Where(f => f.Role == role)];

    /// <summary>Sweeps without their sign among those that repeat them; a placement that lacks it as a whole is none.</summary>
    public static IEnumerable<Sweep> Single(Evidence seen) =>
        !HasSigns(seen) ? [] : seen.Campaign.Blocks().SelectMany(Single);

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen) =>
        !HasSigns(seen) ? [] : [.. OfKinds(seen), .. seen.Campaign.Blocks().SelectMany(block => Singles(seen, block))];

    private IEnumerable<Finding> OfKinds(Evidence seen)
    {
        if (Kinds(seen.Campaign) is var kinds && !kinds.Any(k => k.IsPositive))
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

    private static IEnumerable<Sweep> Single(SweepBlock block) => block.Sweeps.Where((_, j) => IsSingle(block, j));

    // Alone above zero among its repeats, and at their level with the sign.
    private static bool IsSingle(SweepBlock block, int sweep)
    {
        if (!IsPositive(block, sweep))
        {
            return false;
        }

        int[] others = [.. Enumerable.Range(0, block.SweepCount).Where(j => j != sweep && IsNegative(block, j))];
        double level = Sample.Mean(block[sweep]);
        return 2 * level >= FarDb
            && others.Any(j => block.Sweeps[j].Placement == block.Sweeps[sweep].Placement)
            && Math.Abs(level + others.Average(j => Sample.Mean(block[j]))) < AlikeDb;
    }

    private static bool IsPositive(SweepBlock block, int sweep) => !block[sweep].ContainsAnyInRange(double.NegativeInfinity, 0);

    private static bool IsNegative(SweepBlock block, int sweep) => !block[sweep].ContainsAnyInRange(0, double.PositiveInfinity);

    private IEnumerable<Finding> Singles(Evidence seen, SweepBlock block) => Single(block).Select(sweep =>
        Told(seen, Kind.Of(sweep), Severity.Fault) with
        {
            Basis = "All levels of it are above zero, those of sweeps that repeat it below "
                + $"({Amount.Count(block.SweepCount, "sweep", "sweeps")} in all); with the sign it comes within "
                + $"{Amount.Db(AlikeDb)} of them.",
        });

    // The unit explains the levels as well as the sign does.
    private static bool MayBeMicrovolts(Evidence seen)
    {
        double Level(Kind kind) => kind.IsPositive ? kind.LevelDb - WrongUnit.OfMicrovoltsDb : kind.LevelDb;
        Kind[] kinds = Kinds(seen.Campaign);
        double reference = Level(kinds.Single(k => k.Role == SweepRole.Reference));
        return seen.Campaign.Scale == LevelScale.DecibelMilliwatts
            && Array.TrueForAll(kinds, k => Level(k) <= reference + SlackDb);
    }

    private static Kind[] Kinds(AlignedCampaign campaign) =>
    [
        .. campaign.Floor is { } floor ? [Kind.Of(SweepRole.Floor, null, floor)] : Array.Empty<Kind>(),
        Kind.Of(SweepRole.Reference, null, campaign.Reference),
        .. campaign.Covered.Select(c => Kind.Of(SweepRole.Covered, c.Name, c.Block)),
    ];

    private Finding Told(Evidence seen, Kind kind, Severity severity)
    {
        string named = kind.Sweep ?? kind.Specimen?.ToString() ?? $"the {kind.Role.ToString().ToLowerInvariant()}";
        string Level(double db) => string.Create(Amount.Print, $"{db:0.0} {seen.Campaign.Scale.Symbol()}");
        return new Finding
        {
            Code = Code,
            Severity = severity,
            Role = kind.Role,
            Specimen = kind.Specimen,
            Sweep = kind.Sweep,
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
                + (kind.Sweep is null && MayBeMicrovolts(seen) ? ", or their right unit if they are in dBµV" : string.Empty)
                + ", or take the sweeps again.",
        };
    }

    private sealed record Kind(SweepRole Role, SpecimenName? Specimen, double LevelDb, bool IsPositive, bool IsNegative)
    {
        /// <summary>Name of the one sweep that it is; null for all.</summary>
        public string? Sweep { get; init; }

        /// <summary>Its mean level with the sign that it should have, in dB; as it is where not all of it is positive.</summary>
        public double WithSignDb => IsPositive ? -LevelDb : LevelDb;

        /// <summary>A single sweep whose levels are all positive, with their mean in dB.</summary>
        public static Kind Of(Sweep sweep) =>
            new(sweep.Role, sweep.Role == SweepRole.Covered ? SpecimenName.Of(sweep) : null,
                Sample.Mean(sweep.Levels.AsSpan()), IsPositive: true, IsNegative: false)
            { Sweep = sweep.Name };

        /// <summary>All sweeps of a block: the mean in dB of their means, and whether all levels have one sign.</summary>
        public static Kind Of(SweepRole role, SpecimenName? specimen, SweepBlock block) =>
            new(role, specimen, Sample.Mean(block.Means().AsSpan()), block.LowestDb > 0, block.HighestDb < 0);
    }
}
