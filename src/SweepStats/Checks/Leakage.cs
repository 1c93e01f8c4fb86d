using System.Collections.Immutable;
using System.Globalization;
using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>The covered level comes near what reaches the receiver round a solid plate.</summary>
internal sealed class Leakage : ICheck
{
    // 20 dB apart the error stays below 1 dB.
    private const double FarEnoughDb = 20;

    public string Code => "leakage";

    public string? UntestedBecause(Evidence seen) => SetAsideSweeps.OnGrid(seen.Campaign, SweepRole.Plate).Any() ? null
        : seen.Campaign.SetAside.Any(s => s.Role == SweepRole.Plate) ? "the plate sweeps are on other frequencies or in another unit" : "there are no plate sweeps";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        ImmutableArray<double> leakage = PlateLeakage.Of(seen);
        if (leakage.IsEmpty && seen.Campaign.SetAside.Any(s => s.Role == SweepRole.Plate))
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Note,
                Role = SweepRole.Plate,
                Message = "Plate sweeps are there, but not on the frequencies and in the unit of the other sweeps: leakage round the specimen was not looked at.",
                Basis = string.Create(CultureInfo.InvariantCulture, $"{seen.Campaign.SetAside.Count(s => s.Role == SweepRole.Plate)} plate sweeps were read; none has all {seen.Campaign.Grid.Count} frequencies in {seen.Campaign.Scale.Symbol()}."),
                NextStep = "Take the plate with the same start, stop and number of points as the specimens.",
            };
        }

        foreach (ShieldingCurve curve in leakage.IsEmpty ? [] : seen.Curves)
        {
            bool IsNear(int f) => curve.Readings[f].State != ShieldingState.Capped && curve.Readings[f].Evidence.CoveredDb - leakage[f] < FarEnoughDb;
            int[] near = [.. Enumerable.Range(0, leakage.Length).Where(IsNear)];
            if (near.Length == 0)
            {
                continue;
            }

            double ceiling = near.Min(f => curve.Readings[f].Evidence.ReferenceDb - leakage[f]);
            double middle = Sample.Median([.. near.Select(f => curve.Readings[f].Evidence.CoveredDb - leakage[f])]);
            (double higher, double lower) = PlateLeakage.Bounds(middle);
            string most = double.IsFinite(lower) ? string.Create(CultureInfo.InvariantCulture, $"{lower:0.0} dB too small or {higher:0.0} dB too large") : "far too small: the leakage alone could make the covered level";
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Warning,
                Specimen = curve.Name,
                Where = Stretches.Where(seen.Campaign.Grid, IsNear),
                Size = new Decibels(double.IsFinite(lower) ? lower : higher),
                Message = $"At {Amount.OutOf(near.Length, leakage.Length)} the covered level lies less than {Amount.Db(FarEnoughDb)} over what comes round a solid plate (from {Amount.Db(ceiling)} below the reference on): half of these shieldings may be {most}, or more.",
                Basis = string.Create(CultureInfo.InvariantCulture, $"Covered over plate level, the noise taken out of the plate's: median {middle:0.0} dB, lowest {near.Min(f => curve.Readings[f].Evidence.CoveredDb - leakage[f]):0.0} dB, against {FarEnoughDb:0} dB; the two add as voltages of unknown phase."),
                NextStep = "Find the way round: seal the edges of the opening, the cables and the joints of the frame, and take the plate again before the specimens.",
            };
        }
    }
}
