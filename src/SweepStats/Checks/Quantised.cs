using System.Globalization;
using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Levels shown in steps so coarse that they matter.</summary>
internal sealed class Quantised : ICheck
{
    // A step of 0.1 dB adds 0.03 dB: nothing to tell anybody.
    private const double WorthTellingDb = 0.05;

    /// <inheritdoc/>
    public string Code => "quantised";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        // A level that never changes is no sign of a step, whatever is allowed for it.
        ShownStep worst = Steps(seen).MaxBy(s => s.DeviationDb) ?? new ShownStep(SweepRole.Covered, "none", 0);
        if (worst.DeviationDb < WorthTellingDb)
        {
            yield break;
        }

        yield return new Finding
        {
            Code = Code,
            Severity = Severity.Note,
            Role = worst.Role,
            Size = new Decibels(worst.DeviationDb),
            Message = $"Levels come in steps of {Amount.Db(worst.DeviationDb * Math.Sqrt(12))} ({worst.Name}): rounding adds "
                + $"{worst.DeviationDb.ToString("0.00", CultureInfo.InvariantCulture)} dB of standard uncertainty to each "
                + "level, however many sweeps are taken.",
            Basis = string.Create(Amount.Print, $"A step q has a standard uncertainty of q/√12 (JCGM 100, F.2.2.1), here "
                + $"{worst.DeviationDb:0.000} dB; told from {WorthTellingDb} dB on."),
            NextStep = "Export the levels with more digits, or with a finer scale on the display.",
        };
    }

    private static IEnumerable<ShownStep> Steps(Evidence seen) =>
        from block in seen.Campaign.Covered.Select(c => c.Block).Append(seen.Campaign.Reference).Append(seen.Campaign.Floor)
            .OfType<SweepBlock>()
        where DisplayStep.Shows(block)
        let role = block.Sweeps[0].Role
        select new ShownStep(role, Name(block.Sweeps[0]), DisplayStep.Deviation(block));

    private static string Name(Sweep sweep) => sweep.Role switch
    {
        SweepRole.Covered => SpecimenName.Of(sweep).ToString(),
        SweepRole.Reference => "reference",
        _ => "floor",
    };

    private sealed record ShownStep(SweepRole Role, string Name, double DeviationDb);
}
