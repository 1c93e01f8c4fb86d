using System.Globalization;
using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Where no floor was measured: covered sweeps that no longer look like each other have probably reached the receiver's noise.</summary>
internal sealed class SuspectedFloor : ICheck
{
    private const double ClearOfDeclaredDb = 10;

    public string Code => "suspected-floor";

    public string? UntestedBecause(Evidence seen) => seen.Floor is { Source: FloorSource.Measured } ? null
        : seen.Campaign.Grid.Count < SharedShape.FewestPoints ? $"sweeps of fewer than {SharedShape.FewestPoints} frequencies have no shape to tell by"
        : seen.Campaign.Covered.All(c => c.Block.SweepCount < 2) ? "it takes two covered sweeps of a specimen" : null;

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Floor is { Source: FloorSource.Measured })
        {
            yield break;
        }

        double[][] reference = Rows(seen.Campaign.Reference);
        foreach (SpecimenBlock specimen in seen.Campaign.Covered.Where(c => c.Block.SweepCount >= 2))
        {
            double[][] covered = Rows(specimen.Block);
            bool[] lost = SharedShape.Lost(reference, covered);
            int[] here = [.. Enumerable.Range(0, lost.Length).Where(f =>
                lost[f] && (seen.Floor is not { } declared || covered.Average(s => s[f]) >= declared.LevelDb[f] + ClearOfDeclaredDb))];
            if (here.Length > SharedShape.HalfWidth(lost.Length) / 2)
            {
                yield return new Finding
                {
                    Code = Code,
                    Severity = Severity.Warning,
                    Role = SweepRole.Covered,
                    Specimen = specimen.Name,
                    Where = Stretches.Where(seen.Campaign.Grid, here.Contains),
                    Message = string.Create(CultureInfo.InvariantCulture, $"At {Amount.OutOf(here.Length, lost.Length)} the covered sweeps do not show the reference's shape, nor resemble each other: what they show there, about {here.Average(f => covered.Average(s => s[f])):0} on the level scale, is probably the receiver's own noise."),
                    Basis = string.Create(CultureInfo.InvariantCulture, $"Correlation of {covered.Length} covered sweeps with each other over {(2 * SharedShape.HalfWidth(lost.Length)) + 1} neighbouring frequencies, straight line taken out: its 99 % upper limit is below half of what the reference's shape would give there."),
                    NextStep = "Take floor sweeps: source off, all receiver settings as they are, three at least. Where they come out at this level, the shielding is at least what is shown, not equal to it.",
                };
            }
        }
    }

    private static double[][] Rows(SweepBlock block) => [.. Enumerable.Range(0, block.SweepCount).Select(j => block[j].ToArray())];
}
