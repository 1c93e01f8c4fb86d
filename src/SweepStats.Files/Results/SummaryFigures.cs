using SweepStats.Bands;
using SweepStats.Files.Summaries;
using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using static SweepStats.Files.Results.ResultNumber;

namespace SweepStats.Files.Results;

/// <summary>What an analysis found of floor and specimens, as summary.json tells it.</summary>
internal static class SummaryFigures
{
    public static SummaryFloor? Floor(NoiseFloor? floor) => floor is null ? null : new(
        floor.Source.ToString().ToLowerInvariant(), floor.SweepCount, Finite(floor.ReadingDeviationDb),
        Finite(floor.SweepOffsetDeviationDb),
        // Noise without scatter has endless looks, which JSON cannot write.
        [.. floor.Noise.Select(noise => new SummaryNoise(Finite(noise.Looks), Finite(noise.LogAverages)))]);

    public static ImmutableArray<SummarySpecimen> Specimens(AnalysisResult result)
    {
        Verdict relied = result.Verdict.AsRelied();
        return [.. result.Curves.Zip(result.Bands, (curve, band) => Specimen(result, relied, curve, band))];
    }

    private static SummarySpecimen Specimen(AnalysisResult of, Verdict relied, ShieldingCurve curve, BandStatement band) => new()
    {
        Lot = curve.Name.Lot,
        Specimen = curve.Name.Specimen,
        Sweeps = curve.SweepCount,
        Placements = curve.PlacementCount,
        StartHz = band.Band.Start.Value,
        StopHz = band.Band.Stop.Value,
        Confidence = of.Plan.Confidence.Level,
        AtLeastDb = Finite(band.AtLeast?.Value),
        WeakestHz = Finite(band.WeakestAt?.Value),
        MeanDb = Estimate.Of(band.MeanDb),
        P10Db = Estimate.Of(band.TenthPercentileDb),
        ShareMeeting = Estimate.Of(relied.ShareMeeting(band)),
        Field = Field(of, curve.Name),
        Requirement = Stands(relied.Specimens.FirstOrDefault(outcome => outcome.Name == curve.Name)),
        CappedPoints = band.CappedCount,
        Points = band.PointCount,
    };

    // Only where a field is stated: a summary without one is what it was before.
    private static SummaryField? Field(AnalysisResult result, SpecimenName of) =>
        result.Fields.FirstOrDefault(field => field.Name == of) is not { } left ? null : new(
            Finite(left.VoltsPerMetre), Finite(left.Shielding?.Value),
            left.IsTolerable switch { true => "within", false => "not-shown", _ => null }, FieldWords.Of(left.Silence));

    private static SummaryOutcome? Stands(SpecimenOutcome? specimen)
    {
        if (specimen is null)
        {
            return null;
        }

        FrequencyDecision? least = specimen.LeastProbable;
        return new(SummaryJson.Outcome(specimen.Outcome)!, specimen.Count(RequirementOutcome.Meets),
            specimen.Count(RequirementOutcome.Fails), specimen.Count(RequirementOutcome.Undecided),
            specimen.Count(RequirementOutcome.CannotTell), Finite(least?.Probability?.Least), Finite(least?.Probability?.Most),
            Finite(least?.At.Value));
    }
}
