using System.Globalization;
using SweepStats.Alignment;

namespace SweepStats.Checks;

/// <summary>Sweeps on different frequencies.</summary>
internal sealed class GridMismatch : ICheck
{
    public string Code => "grid-mismatch";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (!seen.Campaign.GridDifferences.IsEmpty)
        {
            GridDifference first = seen.Campaign.GridDifferences[0];
            int count = seen.Campaign.GridDifferences.Length;
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Warning,
                LeavesFrequenciesOut = true,
                Message = $"{Amount.Count(count, "sweep has", "sweeps have")} frequencies that others lack ({first.Sweep.Name}: {Amount.Count(first.PointsLeftOut, "point", "points")}); only the {Amount.Count(seen.Campaign.Grid.Count, "frequency", "frequencies")} that all share are analysed, nothing is interpolated.",
                Basis = string.Create(CultureInfo.InvariantCulture, $"{seen.Campaign.GridDifferences.Sum(d => d.PointsLeftOut)} points left out in all, at most {seen.Campaign.GridDifferences.Max(d => d.PointsLeftOut)} of one sweep; frequencies count as the same within a twentieth of the step to the next point."),
                NextStep = "Take floor, reference and covered with the same start, stop and number of points.",
            };
        }
    }
}
