using SweepStats.Leakage;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// Something reaches the receiver on another way than through the specimen, and the covered level comes near it.
/// </summary>
internal sealed class Leakage : ICheck
{
    // 20 dB apart the error stays below 1 dB.
    private const double FarEnoughDb = 20;

    // From here on the two add by less than half: below, the plate reads about as the specimen does.
    private const double AlikeDb = 3;

    /// <inheritdoc/>
    public string Code => "leakage";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => CouldTell(seen) ? null
        : SourceLevelChange.IsPlateElsewhere(seen) ? "the plate was taken at another level of the source than the reference"
        : seen.Campaign.SetAside.Any(s => s.Role == SweepRole.Plate)
        ? "the plate sweeps are on other frequencies or in another unit"
        : Lacking.Sweeps(seen, SweepRole.Plate);

    /// <summary>Whether plate sweeps show the leakage, or how high it may be at most: either stands in the intervals.</summary>
    public static bool CouldTell(Evidence seen) => ComparablePlate(seen) is not null;

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Campaign.SetAside.Any(s => s.Role == SweepRole.Plate) && Plate(seen) is null)
        {
            yield return UnusablePlate(seen);
        }

        if (ComparablePlate(seen) is { } plate && seen.Curves.Sum(c => Hidden(c, plate).Length) is > 0 and var hidden)
        {
            yield return BehindPlate(seen, plate, hidden);
        }

        SteadyLeakage? floor = seen.Leakages.FirstOrDefault(l => l.Source != LeakageSource.Plate);
        if (floor is not null)
        {
            yield return InFloor(seen, floor);
        }

        if (ExchangedPlate.IsLikely(seen))
        {
            yield return Exchanged(seen);
            yield break;
        }

        foreach (ShieldingCurve curve in seen.Leakages.Any(l => l.Anywhere && !l.Subtracted) ? seen.Curves : [])
        {
            int[] near = [.. Enumerable.Range(0, curve.Readings.Length).Where(f => IsNear(curve.Readings[f]))];
            if (near.Length > 0)
            {
                yield return Near(seen, curve, near);
            }
        }
    }

    private Finding UnusablePlate(Evidence seen) => new()
    {
        Code = Code,
        Severity = Severity.Note,
        Role = SweepRole.Plate,
        Message = "Plate sweeps are there, but not on the frequencies and in the unit of the other sweeps: leakage round the "
            + "specimen was not looked at.",
        Basis = string.Create(Amount.Print, $"{Amount.Count(PlateCount(seen), "plate sweep was", "plate sweeps were")} read; "
            + $"none has all {seen.Campaign.Grid.Count} frequencies in {seen.Campaign.Scale.Symbol()}."),
        NextStep = "Take the plate with the same start, stop and number of points as the specimens.",
    };

    private Finding Exchanged(Evidence seen)
    {
        double[] over = ExchangedPlate.OverDb(seen);
        return new Finding
        {
            Code = Code,
            Severity = Severity.Fault,
            Role = SweepRole.Plate,
            Size = new Decibels(over.Max()),
            Bias = Bias.Unknown,
            Message = $"More arrives with the plate than with nothing in its place, by up to {Amount.Db(over.Max())}: plate and "
                + "reference look exchanged.",
            Basis = string.Create(Amount.Print, $"Plate less reference: median {Sample.Median(over):0.0} dB, at "
                + $"{Amount.OutOf(over.Length, seen.Campaign.Grid.Count)}."),
            NextStep = ExchangedPlate.NextStep,
        };
    }

    private Finding BehindPlate(Evidence seen, SteadyLeakage plate, int hidden)
    {
        double below = Sample.Median(
            [.. plate.MayBe.Select((leakage, f) => seen.Curves[0].Readings[f].Evidence.ReferenceDb - leakage.LimitDb)]);
        int bounds = seen.Curves.Sum(c => Bounds(c).Length);
        bool enough = seen.Curves.All(c => Bounds(c) is { Length: 0 } || Reached.By(c, Bounds(c), seen));
        return new Finding
        {
            Code = Code,
            Severity = enough ? Severity.Note : Severity.Warning,
            Role = SweepRole.Plate,
            Size = new Decibels(below),
            Message = $"At {Amount.Count(hidden, "value", "values")} the plate shows nothing but noise, and a leakage that "
                + "matters could hide in it. The intervals allow for it. "
                + $"At half of the frequencies it may be as high as {Amount.Db(below)} below the reference."
                + (bounds > 0 ? $" {Amount.Count(bounds, "value is", "values are")} only a bound for it." : string.Empty),
            Basis = string.Create(Amount.Print, $"95 % limit of what comes beyond the noise, from "
                + $"{Amount.Count(PlateCount(seen), "plate sweep", "plate sweeps")}; it matters from "
                + $"{Materiality.Share * 100:0} % of a half-width on."),
            NextStep = "Take more plate sweeps, or reference and plate with more power: less can hide behind the plate then, "
                + "and the intervals narrow. More averaging or a narrower bandwidth in all sweeps does the same.",
        };
    }

    private static int[] Bounds(ShieldingCurve curve) =>
        [.. Enumerable.Range(0, curve.Readings.Length)
            .Where(f => curve.Readings[f] is ShieldingReading.AtLeast { Evidence.HiddenBehindPlate: true })];

    private static int PlateCount(Evidence seen) => seen.Campaign.SetAside.Count(s => s.Role == SweepRole.Plate);

    private static SteadyLeakage? ComparablePlate(Evidence seen) => SourceLevelChange.IsPlateElsewhere(seen) ? null : Plate(seen);

    private static SteadyLeakage? Plate(Evidence seen) => seen.Leakages.FirstOrDefault(l => l.Source == LeakageSource.Plate);

    private Finding InFloor(Evidence seen, SteadyLeakage leakage)
    {
        ImmutableArray<double> shown = leakage.LevelDb;
        int[] here = [.. Enumerable.Range(0, shown.Length).Where(f => double.IsFinite(shown[f]))];
        double below = Sample.Median([.. here.Select(f => seen.Curves[0].Readings[f].Evidence.ReferenceDb - shown[f])]);
        double overNoise =
            Sample.Median([.. here.Select(f => shown[f] - seen.Floor!.LevelDb[f] + seen.Floor.Noise[0].LogMeanOffset)]);
        return new Finding
        {
            Code = Code,
            Severity = leakage.Subtracted && seen.History is not { Bracketed: true } ? Severity.Warning : Severity.Note,
            Role = SweepRole.Floor,
            Where = here.Length == shown.Length ? [] : Stretches.Where(seen.Campaign.Grid, here.Contains),
            Size = new Decibels(overNoise),
            Message = $"{(here.Length == shown.Length ? "The floor is"
                : $"At {Amount.OutOf(here.Length, shown.Length)} the floor is")} not noise but a steady signal, about {Amount.Db(
                    below)} below the reference and {Amount.Db(
                        overNoise)} over the receiver's own noise: it does not come through the specimen. "
                + (leakage.Subtracted ? "It was taken out of all sweeps as a voltage, since it is stated to be the same with "
                    + "and without the specimen; what the floor shows may be left of it is in the intervals."
                    + (seen.History is { Bracketed: true } ? string.Empty
                        : " Nothing shows that it stayed the same while the specimens were measured.")
                    : "The intervals allow for any phase of it."),
            Basis = leakage.Source == LeakageSource.FloorPhase
                ? string.Create(Amount.Print, $"Mean voltage of {seen.Campaign.Floor!.SweepCount} floor sweeps against their "
                    + $"scatter, at {Amount.OutOf(here.Length, shown.Length)}.")
                : string.Create(Amount.Print, $"{seen.Campaign.Floor!.SweepCount} floor sweeps scatter, or vary over frequency, "
                    + $"as a steady signal does and noise does not."),
            NextStep = leakage.Subtracted
                ? "Take floor sweeps before and after the specimens; twice as many narrow the intervals." : Remedy(seen),
        };
    }

    private Finding Near(Evidence seen, ShieldingCurve curve, int[] near)
    {
        double ceiling = near.Min(f => curve.Readings[f].Evidence.ReferenceDb - curve.Readings[f].Evidence.LeakageDb!.Value);
        double middle = Sample.Median([.. near.Select(f => Over(curve.Readings[f].Evidence))]);
        double most = -VoltageSum.Apart(new Decibels(Math.Max(middle, 0))).Low.Value;
        return new Finding
        {
            Code = Code,
            Severity = Severity.Warning,
            Specimen = curve.Name,
            Where = Stretches.Where(seen.Campaign.Grid, near.Contains),
            Size = double.IsFinite(most) ? new Decibels(most) : null,
            Message = $"At {Amount.OutOf(near.Length, curve.Readings.Length)} the covered level lies less than "
                + $"{Amount.Db(FarEnoughDb)} over what comes on another way than through the specimen (from "
                + $"{Amount.Db(ceiling)} below the reference on): the figures are less sure for it. Where leakage may be all "
                + "there is, only a bound is given.",
            Basis = string.Create(Amount.Print, $"Covered level over leakage: median {middle:0.0} dB, lowest "
                + $"{near.Min(f => Over(curve.Readings[f].Evidence)):0.0} dB, against {FarEnoughDb:0} dB; the two add as "
                + $"voltages of unknown phase."),
            NextStep = seen.Leakages.Any(l => l.Source == LeakageSource.Plate && l.Anywhere)
                ? (middle < AlikeDb ? "Look first whether the specimen was left in place of the plate. If not, find" : "Find")
                    + " the way round: seal the edges of the opening, the cables and the joints of the frame, "
                    + "and take the plate again before the specimens."
                : Remedy(seen),
        };
    }

    private static string Remedy(Evidence seen) =>
        "Isolate better: tighten joints, use better cables, put absorbers in the way round, turn the antennas, or calibrate the "
        + "isolation. A narrower bandwidth does not help."
        + (MaySubtract(seen) ? " Where the leakage stays the same with the specimen in place, write leakage = \"same\" under "
            + "[setup]: it is then subtracted." : string.Empty);

    // Frequencies at which a leakage that the plate does not show could move a value, or leaves only a bound. An interval that is
    // narrow by chance asks no more of the plate than its neighbours do.
    private static int[] Hidden(ShieldingCurve curve, SteadyLeakage plate)
    {
        double usual = Materiality.Share * Materiality.HalfWidthDb([curve]);
        bool Hides(int f)
        {
            double over = curve.Readings[f].Evidence.CoveredDb - plate.MayBe[f].LimitDb;
            double shift = over > 0 ? -VoltageSum.Apart(new Decibels(over)).Low.Value : double.PositiveInfinity;
            return shift > usual && Materiality.Matters(shift, curve.Readings[f]);
        }

        return
        [
            .. Enumerable.Range(0, curve.Readings.Length)
                .Where(f => !double.IsFinite(plate.LevelDb[f]) && (curve.Readings[f].Evidence.HiddenBehindPlate || Hides(f))),
        ];
    }

    private static bool MaySubtract(Evidence seen) =>
        seen.Leakages.Any(l => l is { Source: LeakageSource.FloorPhase, Subtracted: false })
            && LeakageSubtraction.IsPossible(seen.Campaign);

    private static double Over(ReadingEvidence at) => at.CoveredDb - at.LeakageDb!.Value;

    // Where the noise alone leaves a bound the leakage below it changes nothing.
    private static bool IsNear(ShieldingReading reading) =>
        reading.Evidence is { LeakageDb: not null } at && Over(at) < FarEnoughDb
            && (at.LeakageRules || reading.State != ShieldingState.Capped);
}
