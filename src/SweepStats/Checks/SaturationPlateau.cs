using System.Globalization;
using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Sweeps whose highest readings stand at one value over neighbouring frequencies: the receiver shows no more.</summary>
internal sealed class SaturationPlateau : ICheck
{
    public string Code => "saturation-plateau";

    public string? UntestedBecause(Evidence seen) =>
        seen.Campaign.Grid.Count >= PlateauSearch.Shortest ? null : $"a flat top needs {PlateauSearch.Shortest} frequencies at least";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        IEnumerable<(SweepRole Role, SpecimenName? Specimen, SweepBlock Block)> blocks =
            seen.Campaign.Covered.Select(c => (SweepRole.Covered, (SpecimenName?)c.Name, c.Block)).Prepend((SweepRole.Reference, null, seen.Campaign.Reference));
        foreach ((SweepRole role, SpecimenName? specimen, SweepBlock block) in blocks)
        {
            bool[] flat = IsNormalised(seen, block) ? [] : PlateauSearch.Find(block, Others(seen, block));
            bool wide = flat.Contains(true);
            bool[] plateau = wide ? flat : TiedTops.Find(block);
            int count = plateau.Count(p => p);
            if (count == 0)
            {
                continue;
            }

            string what = role == SweepRole.Reference ? "the reference" : "the covered level";
            string end = role == SweepRole.Reference ? "the shielding comes out too small there" : "the shielding comes out too large there";
            double top = Enumerable.Range(0, block.PointCount).Where(f => plateau[f]).Max(f => Enumerable.Range(0, block.SweepCount).Max(j => block[j][f]));
            yield return new Finding
            {
                Code = Code,
                Severity = wide ? Severity.Fault : Severity.Warning,
                Role = role,
                Specimen = specimen,
                Size = wide ? null : new Decibels(TiedTops.Scatter(block)),
                Where = Stretches.Where(seen.Campaign.Grid, f => plateau[f]),
                Message = $"At {Amount.OutOf(count, block.PointCount)} {what} stands at its highest value, {top.ToString("0.0", CultureInfo.InvariantCulture)} {seen.Campaign.Scale.Symbol()}, {(wide ? "in most sweeps" : "to the last digit in some sweep")}: the receiver or its display shows no more, and {end} by {(wide ? "an unknown amount" : $"about as much as single readings scatter, {Amount.Db(TiedTops.Scatter(block))}, at most, unless more is clipped")}.",
                Basis = wide
                    ? string.Create(CultureInfo.InvariantCulture, $"Longest flat top {Longest(plateau)} neighbouring frequencies, in {PlateauSearch.Most(block)} of {block.SweepCount} sweeps or more; by chance as long a one comes in less than one of 1000 campaigns.")
                    : string.Create(CultureInfo.InvariantCulture, $"Of all readings {Tied(block)} stand at the highest level, more than the number just below it lets expect; by chance as many come in less than one of 10 000 campaigns."),
                NextStep = "Put in more input attenuation, turn the source down, or raise the top of the display, until no sweep has a flat top; then take all sweeps again.",
            };
        }
    }

    private static int Tied(SweepBlock block)
    {
        double top = Enumerable.Range(0, block.SweepCount).Max(j => block[j].ToArray().Max());
        return Enumerable.Range(0, block.SweepCount).Sum(j => block[j].ToArray().Count(level => level == top));
    }

    // A reference that the analyser has divided by itself is 0 dB everywhere, and no receiver's limit.
    private static bool IsNormalised(Evidence seen, SweepBlock block) =>
        seen.Campaign.Scale == LevelScale.DecibelRatio && Enumerable.Range(0, block.SweepCount).All(j => block[j].IndexOfAnyExcept(0.0) < 0);

    private static IEnumerable<SweepBlock> Others(Evidence seen, SweepBlock block) =>
        seen.Campaign.Covered.Select(c => c.Block).Append(seen.Campaign.Reference).Append(seen.Campaign.Floor).OfType<SweepBlock>().Where(other => !ReferenceEquals(other, block));

    private static int Longest(bool[] plateau)
    {
        int longest = 0;
        int length = 0;
        foreach (bool stuck in plateau)
        {
            length = stuck ? length + 1 : 0;
            longest = Math.Max(longest, length);
        }

        return longest;
    }
}
