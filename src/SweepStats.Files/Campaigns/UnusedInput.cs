using System.Globalization;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>Says what a campaign states or holds and an analysis makes no use of, so that nobody takes it for used.</summary>
internal static class UnusedInput
{
    public static IEnumerable<string> Of(CampaignSettings settings, SweepList list, SweepBatch batch)
    {
        IReadOnlyCollection<Sweep> sweeps = batch.Sweeps;
        if (settings.Plan.DeclaredFloorDb is not null && sweeps.Any(s => s.Role == SweepRole.Floor && s.ExcludedBecause is null))
        {
            yield return "declared_dbm stands in only for floor sweeps that show no noise: floor sweeps were taken";
        }

        foreach (string line in OfFloorAndLeakage(settings.Plan, list, [.. sweeps.Where(s => s.ExcludedBecause is null)]))
        {
            yield return line;
        }

        if (settings.ImpedanceOhm is not null && !batch.HoldsVoltages && sweeps.Count > 0)
        {
            yield return "impedance_ohm was not used: no level is a voltage";
        }

        if (sweeps.Any(s => s.Role == SweepRole.Linearity && s.SourceDbm is null))
        {
            yield return "linearity sweeps without source_dbm in sweeps.csv were not used: it takes the source levels to tell "
                + "whether the receiver follows them";
        }

        if (list.Entries.Any(e => e.TakenAt is not null) && OfTimes([.. sweeps.Where(
            s => s.ExcludedBecause is null && s.Role is SweepRole.Reference or SweepRole.Covered)]) is { } times)
        {
            yield return times;
        }
    }

    private static string? OfTimes(Sweep[] signal)
    {
        int untimed = signal.Count(s => s.TakenAt is null);
        return untimed > 0 ? string.Create(CultureInfo.InvariantCulture,
                $"{untimed} of {signal.Length} reference and covered sweeps have no time (taken_at): drift of repeats can "
                    + $"then be looked for along their order alone")
            : signal.Select(s => s.TakenAt).Distinct().Count() < 2
                ? "all reference and covered sweeps have the same time (taken_at): drift of repeats can then be looked for along "
                    + "their order alone"
            : null;
    }

    private static IEnumerable<string> OfFloorAndLeakage(AnalysisPlan plan, SweepList list, Sweep[] used)
    {
        bool floor = used.Any(s => s.Role == SweepRole.Floor);
        if (plan.FloorTaking != SweepTaking.Unstated && !floor)
        {
            yield return "floor.taken was not used: "
                + $"{(list.Entries.Any(e => e.Role == SweepRole.Floor && e.Exclude is null) ? "no floor file could be read"
                    : "there are no floor sweeps")}";
        }

        if (plan.FloorStabilityDb is not null && !floor && plan.DeclaredFloorDb is null)
        {
            yield return "floor.stability_db was not used: no floor is known";
        }

        if (plan.SameLeakage && used.All(s => s.Phases.IsEmpty))
        {
            yield return "leakage = \"same\" was not used: no sweep carries phase";
        }
    }
}
