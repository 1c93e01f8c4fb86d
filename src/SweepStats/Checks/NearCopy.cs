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

    public string Code => "near-copy";

    public string? UntestedBecause(Evidence seen) => NearCopies.CouldBeTold(seen.Campaign) ? null
        : "that takes four reference sweeps, covered sweeps that repeat each other, and twenty frequencies";

    public IEnumerable<Finding> Inspect(Evidence seen) => NearCopies.Among(seen.Campaign).Select(alike => Told(seen, alike));

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
            + $"({Named(alike)}): "
            + $"a reading differs by {Hundredths(alike.ApartDb)} between them, "
            + $"{(alike.IsByFrequency ? "and by" : "in other sweeps by")} "
            + $"{Hundredths(alike.UsualDb)}{(alike.IsByFrequency ? " from frequency to frequency" : string.Empty)}. "
            + "They are counted as repeats, and intervals are too narrow for it.",
        Basis = "Standard deviations of a reading from steps between neighbouring frequencies, "
            + string.Create(Amount.Print, $"{seen.Campaign.Grid.Count} of them, which an offset leaves alone; told below one in "
                + $"{1 / NearCopies.Share:0} of the usual."),
        NextStep = "Look whether files were made from each other, or one average was read several times; take the sweeps again.",
    };

    private static string Named(NearCopies alike) => string.Join(", ", alike.Sweeps.Take(MostNamed).Select(s => s.Name))
        + (alike.Sweeps.Length > MostNamed ? $" and {Amount.Count(alike.Sweeps.Length - MostNamed, "more", "more")}"
            : string.Empty);

    private static string Hundredths(double db) => string.Create(Amount.Print, $"{Math.Max(db, 0.001):0.00#} dB");
}
