using System.Globalization;
using SweepStats.Sweeps;

namespace SweepStats.Rehearsal;

/// <summary>
/// The sweeps of a campaign in the order of a day at the bench: half the floor, linearity, half the reference, plate, covered,
/// the rest of the reference, the rest of the floor.
/// </summary>
internal sealed class SweepList
{
    private readonly ImmutableArray<PlannedSweep>.Builder _list = ImmutableArray.CreateBuilder<PlannedSweep>();
    private readonly Dictionary<SweepRole, int> _counts = [];
    private int _drawn;

    private SweepList()
    {
    }

    /// <summary>The sweeps in the order in which they are taken; each has a stream of draws of its own.</summary>
    public static ImmutableArray<PlannedSweep> Of(RehearsalPlan plan, ImmutableArray<TrueShielding> truth)
    {
        var list = new SweepList();
        list.Add(SweepRole.Floor, plan.FloorSweeps);
        for (int round = 0; round < (plan.LinearitySourcesDbm.IsEmpty ? 0 : plan.LinearitySweeps); round++)
        {
            plan.LinearitySourcesDbm.ToList().ForEach(source => list.Add(SweepRole.Linearity, 1, source));
        }

        int first = (plan.ReferenceSweeps + 1) / 2;
        list.Add(SweepRole.Reference, first);
        list.Add(SweepRole.Plate, plan.PlateSweeps);
        list.Cover(plan, truth);
        list.Add(SweepRole.Reference, plan.ReferenceSweeps - first);
        return FloorOnBothSides([.. list._list], plan.FloorSweeps);
    }

    private static ImmutableArray<PlannedSweep> FloorOnBothSides(ImmutableArray<PlannedSweep> sweeps, int floor)
    {
        int first = (floor + 1) / 2;
        return [.. sweeps[..first], .. sweeps[floor..], .. sweeps[first..floor]];
    }

    private void Cover(RehearsalPlan plan, ImmutableArray<TrueShielding> truth)
    {
        int placements = 0;
        foreach (TrueShielding specimen in truth)
        {
            for (int p = 0; p < Math.Max(1, plan.Placements); p++)
            {
                placements++;
                string? placement = plan.Placements == 0 ? null : Text($"p{p + 1}");
                string folder = $"covered/{specimen.Name.Lot}/{specimen.Name.Specimen}/"
                    + (placement is null ? string.Empty : placement + "/");
                for (int s = 0; s < plan.CoveredSweeps; s++)
                {
                    Add(new PlannedSweep(SweepRole.Covered, folder + Text($"covered-{s + 1:00}.csv"))
                    {
                        Behind = specimen,
                        Placement = placement,
                        PlacementNumber = placements,
                    });
                }
            }
        }
    }

    private void Add(SweepRole role, int count, double? source = null)
    {
        string name = role.ToString().ToLowerInvariant();
        for (int i = 0; i < count; i++)
        {
            Add(new PlannedSweep(role,
                Text($"{name}/{name}-{_counts.GetValueOrDefault(role) + 1:00}.csv"))
            { SourceDbm = source });
        }
    }

    // Linearity and plate sweeps are drawn apart: planning them leaves the others as they were.
    private void Add(PlannedSweep sweep)
    {
        int number = _counts[sweep.Role] = _counts.GetValueOrDefault(sweep.Role) + 1;
        ulong stream = sweep.Role switch
        {
            SweepRole.Linearity => DrawStreams.Linearity(number),
            SweepRole.Plate => DrawStreams.Plate(number),
            _ => DrawStreams.Sweep(_drawn++),
        };
        _list.Add(sweep with { Number = number, Stream = stream });
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
