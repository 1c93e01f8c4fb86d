using SweepStats.Alignment;
using SweepStats.Clipping;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Sweeps whose highest readings stand at one value: the receiver shows no more.</summary>
internal sealed class SaturationPlateau : ICheck
{
    /// <inheritdoc/>
    public string Code => "saturation-plateau";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) =>
        seen.Campaign.Grid.Count >= FlatRun.Shortest ? null : $"a flat top needs {FlatRun.Shortest} frequencies at least";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen) =>
        from found in seen.Campaign.Covered.Zip(seen.Clipping.Covered,
            (c, clipped) => new Clipped(SweepRole.Covered, c.Name, c.Block, clipped))
            .Prepend(new Clipped(SweepRole.Reference, null, seen.Campaign.Reference, seen.Clipping.Reference))
        where found.Readings.Kind != ClippingKind.None
        select Told(seen, found);

    private Finding Told(Evidence seen, Clipped found)
    {
        ClippedReadings readings = found.Readings;
        string level = string.Create(Amount.Print, $"{readings.LevelDb:0.0} {seen.Campaign.Scale.Symbol()}");
        string what = found.Role == SweepRole.Reference ? "the reference" : "the covered level";
        return new Finding
        {
            Code = Code,
            Severity = readings.Kind == ClippingKind.Wide ? Severity.Fault : Severity.Warning,
            Role = found.Role,
            Specimen = found.Specimen,
            Size = readings.Kind == ClippingKind.Tied ? new Decibels(readings.ScatterDb) : null,
            Where = Stretches.Where(seen.Campaign.Grid, readings.IsAt),
            Bias = found.Role == SweepRole.Reference ? Bias.TooSmall : null,
            Message = $"At {Amount.OutOf(readings.Count, found.Block.PointCount)} {what} stands at its highest value, {level}, "
                + "in one sweep or more: "
                + $"the receiver or its display shows no more. {Consequence(found)}",
            Basis = Basis(found),
            NextStep = "Put in more input attenuation, turn the source down, or raise the top of the display, until no sweep "
                + "has a flat top; then take all sweeps again.",
        };
    }

    private static string Consequence(Clipped found)
    {
        string much = found.Readings.Kind == ClippingKind.Tied
            ? $"about as much as single readings scatter, {Amount.Db(found.Readings.ScatterDb)}, at most, unless more is clipped"
            : "an unknown amount";
        return found.Role == SweepRole.Reference
            ? $"The reference reads too low there by {much}, and the shielding comes out too small: it is at least what is "
                + "shown there."
            : $"The covered level reads too low there by {much}, and the shielding comes out too large: no figure can be "
                + "claimed there.";
    }

    private static string Basis(Clipped found) => found.Readings.Kind switch
    {
        ClippingKind.Wide => string.Create(Amount.Print,
            $"Longest flat top {found.Readings.Longest} neighbouring frequencies, in {FlatRun.Most(found.Block)} of "
            + $"{found.Block.SweepCount} sweeps or more; "
            + $"by chance as long a one comes in less than one of 1000 campaigns."),
        ClippingKind.Tied => string.Create(Amount.Print,
            $"Of all readings {found.Readings.ReadingCount} stand at the highest level, more than the number just below it lets "
                + $"expect; by chance as many come in less than one of 10 000 campaigns."),
        _ => string.Create(Amount.Print, $"Other sweeps of the campaign are clipped at this level; "
            + $"{Amount.Count(found.Readings.ReadingCount, "reading stands", "readings stand")} at it here, and none above."),
    };

    private sealed record Clipped(SweepRole Role, SpecimenName? Specimen, SweepBlock Block, ClippedReadings Readings);
}
