using System.Globalization;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Tests.Checks;

/// <summary>Campaigns that R drew with something wrong in them (fixtures/oracles/wrong-campaigns.R).</summary>
internal static class DrawnByR
{
    public static Campaign Campaign(string name) =>
        new(name, [.. Fixtures.Cells("oracles/wrong-campaigns-sweeps.csv").Where(row => row[0] == name).Select(Sweep)]);

    private static Sweep Sweep(string[] row, int place)
    {
        SweepRole role = Enum.Parse<SweepRole>(row[1], ignoreCase: true);
        double[] levels = [.. row[5..].Select(Number)];
        string? OfCovered(string word) => role == SweepRole.Covered && word.Length > 0 ? word : null;
        return new Sweep($"{row[1]}-{place + 1}", role, Rehearsed.Grid(levels.Length), [.. levels], LevelScale.DecibelMilliwatts)
        {
            Lot = OfCovered("A"),
            Specimen = OfCovered(row[2]),
            Placement = OfCovered(row[3]),
            SourceDbm = role == SweepRole.Floor ? null : Number(row[4]),
        };
    }

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
