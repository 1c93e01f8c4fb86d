using SweepStats.Alignment;
using SweepStats.Linearity;
using SweepStats.Quantities;
using SweepStats.Repeats;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Sweeps so alike that one was made from the other, or one average was read several times.</summary>
/// <remarks>
/// How alike that is, says <see cref="NearCopies"/>. Where all sweeps of a kind are so alike, nothing shows how they should
/// scatter, but of noise.
/// </remarks>
internal sealed class NearCopy : ICheck
{
    private const int MostNamed = 3;

    /// <inheritdoc/>
    public string Code => "near-copy";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => seen.Campaign.Grid.Count < NearCopies.FewestPoints
        ? $"it takes {NearCopies.FewestPoints} frequencies"
        : Repeated(seen).Any() ? null : "no sweep is repeated";

    /// <inheritdoc/>
    public string? LeftBecause(Evidence seen)
    {
        string[] left = [.. new[] { LeftOfReference(seen), LeftOfCovered(seen) }.OfType<string>()];
        return left.Length == 0 ? null : string.Join("; ", left);
    }

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        double leastDb = LeastOfReferenceDb(seen);
        NearCopies[] found = [.. NearCopies.Among(seen.Campaign, seen.Floor, leastDb, seen.Threads)];
        return
        [
            .. CopiedSpecimens.Among(seen.Campaign, seen.Floor, seen.Threads) is { } copied
                ? [Between(seen, copied)] : Array.Empty<Finding>(),
            .. found.Select(alike => Told(seen, alike)),
            .. leastDb == 0 && !Array.Exists(found, f => f.Role == SweepRole.Reference) && Quiet(seen) is { } quiet
                ? [Said(seen, quiet)] : Array.Empty<Finding>(),
        ];
    }

    private static double LeastOfReferenceDb(Evidence seen) =>
        SteppedScatter.LeastOfReferenceDb(seen.Campaign, seen.Floor, seen.SourceDbm);

    private static IEnumerable<SweepBlock> Repeated(Evidence seen) =>
        seen.Campaign.Covered.Select(c => c.Block).Append(seen.Campaign.Reference)
            .Concat(seen.Campaign.Floor is { } floor ? [floor] : Array.Empty<SweepBlock>()).Where(b => b.SweepCount > 1);

    private static string? LeftOfReference(Evidence seen) =>
        NearCopies.ShowUsual(seen.Campaign.Reference) || LeastOfReferenceDb(seen) > 0 ? null
            : "without linearity sweeps nothing shows how fewer than four reference sweeps should differ";

    private static string? LeftOfCovered(Evidence seen)
    {
        SweepBlock[] repeated = [.. seen.Campaign.Covered.Select(c => c.Block).Where(b => b.SweepCount > 1)];
        return repeated.Length == 0 || NearCopies.ShowUsual(repeated) ? null
            : seen.Campaign.Reference.SweepCount < 2
            ? "with a single reference sweep nothing shows how so few covered sweeps should differ"
            : Array.TrueForAll(repeated, b => NearCopies.IsSignal(b, seen.Floor)) ? null
            : "nothing shows how so few covered sweeps should differ where they may be noise";
    }

    private static NearCopies? Quiet(Evidence seen) =>
        NearCopies.QuietReference(seen.Campaign, SteppedScatter.LeastOfCoveredDb(seen.Campaign, seen.Floor));

    // A cloth that moves makes the reference look quiet beside it, so that nobody is accused.
    private Finding Said(Evidence seen, NearCopies alike) => Told(seen, alike) with
    {
        Severity = Severity.Note,
        Bias = null,
        Misleads = false,
        Message = $"{alike.Sweeps.Length} reference sweeps are nearly alike: a reading differs by {Hundredths(alike.ApartDb)} "
            + $"between them, {Beside(alike)}. Nothing here tells whether the cloth moves, or whether these files were made from "
            + "each other and intervals are too narrow.",
        NextStep = "Look whether reference files were made from each other. Three linearity sweeps with 10 dB less source power "
            + "would tell.",
    };

    // As for sweeps that agree at every point: one of them is not what it says it is.
    private Finding Between(Evidence seen, CopiedSpecimens copied) => new()
    {
        Code = Code,
        Severity = Severity.Fault,
        Role = SweepRole.Covered,
        Size = new Decibels(copied.ApartDb),
        Bias = Bias.Unknown,
        Misleads = true,
        Message = $"{copied.Sweeps.Length} covered sweeps of "
            + $"{Named([.. copied.Specimens.Select(s => s.ToString())])} are nearly copies of another specimen's "
            + $"({Named([.. copied.Sweeps.Select(s => s.Name)])}): a reading differs by {Hundredths(copied.ApartDb)} "
            + $"between them, where sweeps of one specimen or of the reference differ by {Hundredths(copied.UsualDb)}. "
            + "One of each two is not what it says it is.",
        Basis = Steps(seen) + string.Create(Amount.Print, $"told below one in {1 / NearCopies.Share:0} of what sweeps of one of "
            + $"the two specimens differ by, or one in {1 / NearCopies.ShareOfSteps:0} of the reference if both stand clear of "
            + $"the floor."),
        NextStep = "Look whether one trace was saved for several specimens; sweep again those that were not swept.",
    };

    private static string Steps(Evidence seen) => "Standard deviations of a reading from steps between neighbouring frequencies, "
        + string.Create(Amount.Print, $"{seen.Campaign.Grid.Count} of them, which an offset leaves alone; ");

    private Finding Told(Evidence seen, NearCopies alike) => new()
    {
        Code = Code,
        Severity = Severity.Warning,
        Role = alike.Role,
        Specimen = alike.Specimen,
        Size = new Decibels(alike.ApartDb),

        // How far sweeps scatter that are none is not known then; the floor's own scatter is small beside that.
        Bias = alike.Role == SweepRole.Floor ? null : Bias.Unknown,
        Misleads = true,
        Message = $"{alike.Sweeps.Length} {WrongKind.Kind(alike.Role, alike.Specimen, one: false)} are nearly copies "
            + $"({Named([.. alike.Sweeps.Select(s => s.Name)])}): "
            + $"a reading differs by {Hundredths(alike.ApartDb)} between them, "
            + $"{Beside(alike)}. "
            + "They are counted as repeats, and intervals are too narrow for it.",
        Basis = Steps(seen)
            + string.Create(Amount.Print, $"told below one in {1 / Share(alike):0} of the usual."),
        NextStep = "Look whether files were made from each other, or one average was read several times; take the sweeps again.",
    };

    private static string Beside(NearCopies alike) => alike.Beside switch
    {
        NearCopiesBeside.Frequencies => $"and by {Hundredths(alike.UsualDb)} from frequency to frequency",
        NearCopiesBeside.CoveredSweeps => $"and between covered sweeps by {Hundredths(alike.UsualDb)} or more, apart from noise",
        NearCopiesBeside.ReferenceSweeps => $"and between reference sweeps by {Hundredths(alike.UsualDb)}",
        NearCopiesBeside.LinearitySweeps => $"and from sweep to sweep with less source power by {Hundredths(alike.UsualDb)}",
        _ => $"in other sweeps by {Hundredths(alike.UsualDb)}",
    };

    private static double Share(NearCopies alike) =>
        alike.Beside is NearCopiesBeside.OtherSweeps or NearCopiesBeside.Frequencies ? NearCopies.Share
            : NearCopies.ShareOfSteps;

    private static string Named(string[] names) => string.Join(", ", names.Take(MostNamed))
        + (names.Length > MostNamed ? $" and {Amount.Count(names.Length - MostNamed, "more", "more")}" : string.Empty);

    private static string Hundredths(double db) => string.Create(Amount.Print, $"{Math.Max(db, 0.001):0.00#} dB");
}
