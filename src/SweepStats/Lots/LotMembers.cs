using SweepStats.Sweeps;

namespace SweepStats.Lots;

/// <summary>Which specimens of a campaign are specimens of lots.</summary>
internal static class LotMembers
{
    /// <summary>All but the yardstick, which is a specimen of no lot; with it where there is nothing else.</summary>
    public static CurvesAndSweeps Of(
        CurvesAndSweeps specimens, SpecimenName? yardstick) =>
        specimens.Curves.All(c => c.Name == yardstick)
            ? specimens
            : new([.. specimens.Curves.Where(c => c.Name != yardstick)], [.. specimens.Sweeps.Where(s => s.Name != yardstick)]);
}
