using SweepStats.Sweeps;

namespace SweepStats.Alignment;

/// <summary>Brings sweeps that are no part of the shielding, of plates and of source steps, onto the campaign's grid.</summary>
internal static class SetAsideSweeps
{
    /// <summary>
    /// The sweeps of a role that have every frequency of the grid and the campaign's scale, with their levels and phases there.
    /// </summary>
    public static IEnumerable<SetAsideSweep> OnGrid(AlignedCampaign campaign, SweepRole role) =>
        OnGrid(campaign, campaign.SetAside.Where(s => s.Role == role));

    /// <summary>Those of some sweeps that have every frequency of the grid and the campaign's scale.</summary>
    public static IEnumerable<SetAsideSweep> OnGrid(AlignedCampaign campaign, IEnumerable<Sweep> sweeps)
    {
        foreach (Sweep sweep in sweeps.Where(s => s.Scale == campaign.Scale))
        {
            ImmutableArray<int> places = CommonGrid.Places(campaign.Grid, sweep.Grid);
            if (!places.Contains(-1))
            {
                yield return new SetAsideSweep(sweep, At(sweep.Levels, places), At(sweep.Phases, places));
            }
        }
    }

    private static ImmutableArray<double> At(ImmutableArray<double> values, ImmutableArray<int> places) =>
        values.IsEmpty ? [] : [.. places.Select(p => values[p])];
}
