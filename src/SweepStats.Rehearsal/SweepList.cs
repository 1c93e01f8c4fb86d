using System.Collections.Immutable;
using System.Globalization;
using SweepStats.Sweeps;

namespace SweepStats.Rehearsal;

/// <summary>A sweep that is to be taken.</summary>
internal sealed record PlannedSweep(SweepRole Role, string Path)
{
    public TrueShielding? Behind { get; init; }

    public string? Placement { get; init; }

    /// <summary>Number of the placement in the whole campaign; sweeps of one placement share its offset.</summary>
    public int PlacementNumber { get; init; }
}

/// <summary>The sweeps of a campaign in the order of a day at the bench: floor, half the reference, covered, the rest of the reference.</summary>
internal static class SweepList
{
    public static ImmutableArray<PlannedSweep> Of(RehearsalPlan plan, ImmutableArray<TrueShielding> truth)
    {
        var list = ImmutableArray.CreateBuilder<PlannedSweep>();
        Add(list, SweepRole.Floor, 0, plan.FloorSweeps);
        int first = (plan.ReferenceSweeps + 1) / 2;
        Add(list, SweepRole.Reference, 0, first);
        int placements = 0;
        foreach (TrueShielding specimen in truth)
        {
            for (int p = 0; p < Math.Max(1, plan.Placements); p++)
            {
                placements++;
                string? placement = plan.Placements == 0 ? null : Text($"p{p + 1}");
                string folder = $"covered/{specimen.Name.Lot}/{specimen.Name.Specimen}/" + (placement is null ? string.Empty : placement + "/");
                for (int s = 0; s < plan.CoveredSweeps; s++)
                {
                    list.Add(new PlannedSweep(SweepRole.Covered, folder + Text($"covered-{s + 1:00}.csv"))
                    {
                        Behind = specimen,
                        Placement = placement,
                        PlacementNumber = placements,
                    });
                }
            }
        }

        Add(list, SweepRole.Reference, first, plan.ReferenceSweeps);
        return list.ToImmutable();
    }

    private static void Add(ImmutableArray<PlannedSweep>.Builder list, SweepRole role, int from, int to)
    {
        string name = role == SweepRole.Floor ? "floor" : "reference";
        for (int i = from; i < to; i++)
        {
            list.Add(new PlannedSweep(role, Text($"{name}/{name}-{i + 1:00}.csv")));
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
