using System.Globalization;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Floor sweeps that show the bottom of a display and no noise; they are not used.</summary>
internal sealed class DeadFloor : ICheck
{
    public string Code => "dead-floor";

    public string? UntestedBecause(Evidence seen) => seen.DeadFloor is null && seen.Campaign.Floor is null ? "there are no floor sweeps" : null;

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.DeadFloor is not { } floor)
        {
            yield break;
        }

        double share = FloorLife.ShareAtBottom(floor);
        double bottom = Enumerable.Range(0, floor.SweepCount).Min(j => floor[j].ToArray().Min());
        string many = share == 1 ? "every reading stands" : string.Create(CultureInfo.InvariantCulture, $"{share * 100:0} % of the readings stand");
        yield return new Finding
        {
            Code = Code,
            Severity = Severity.Fault,
            Role = SweepRole.Floor,
            Message = string.Create(CultureInfo.InvariantCulture, $"The floor sweeps show no noise: {many} at {bottom:0.00} {seen.Campaign.Scale.Symbol()}. They were not used, so nobody can tell which readings are noise; only lower bounds are given."),
            Basis = string.Create(CultureInfo.InvariantCulture, $"{floor.SweepCount} floor sweeps of {floor.PointCount} frequencies; noise varies from reading to reading where the display goes low enough to show it."),
            NextStep = "Lower the bottom of the display, or export what was measured and not what was shown, and take the floor again.",
        };
    }
}
