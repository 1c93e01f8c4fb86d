using System.Globalization;
using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Tests.Shielding;

/// <summary>Far above the floor the interval for the shielding has to be Welch's for the difference of two means.</summary>
public sealed class WelchComparisonTests
{
    private static readonly RepeatedLevel NoFloor = new(-1000, Contribution.None);

    public static TheoryData<string, double, double[]> Cases
    {
        get
        {
            var cases = new TheoryData<string, double, double[]>();
            foreach (string[] row in Fixtures.Cells("oracles/welch.csv"))
            {
                double[] numbers = [.. row.Skip(1).Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))];
                cases.Add(row[0], numbers[0], numbers);
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void TheIntervalAgreesWithR(string name, double level, double[] row)
    {
        ShieldingLimits limits = Limits(name, level, 0);
        Agreement.Relative(1e-10, row[1], limits.SeDb, row);
        Agreement.Relative(1e-10, row[2], limits.DegreesOfFreedom, row);
        Agreement.Relative(1e-10, row[3], limits.SeDb / limits.StandardUncertaintyDb, row);
        Agreement.Relative(1e-10, row[4],
            2 * StudentT.UpperTail(limits.SeDb / limits.StandardUncertaintyDb, limits.DegreesOfFreedom), row);
        Agreement.Within(1e-8, row[5], limits.LowDb, row);
        Agreement.Within(1e-8, row[6], limits.HighDb, row);
    }

    [Fact]
    public void ThePublishedFiguresComeOut()
    {
        // EPA Unified Guidance 2009, example 16-1, recomputed; sleep data: R documentation, from memory.
        ShieldingLimits sulfate = Limits("sulfate", 0.95, 0);
        Assert.Equal(5.9826, sulfate.SeDb / sulfate.StandardUncertaintyDb, 0.00005);
        Assert.Equal(11.955, sulfate.DegreesOfFreedom, 0.0005);
        Assert.Equal(45.82, sulfate.LowDb, 0.005);
        Assert.Equal(98.35, sulfate.HighDb, 0.005);
        ShieldingLimits sleep = Limits("sleep", 0.95, 0);
        Assert.Equal(1.8608, sleep.SeDb / sleep.StandardUncertaintyDb, 0.00005);
        Assert.Equal(17.776, sleep.DegreesOfFreedom, 0.0005);
    }

    [Fact]
    public void ShiftingBothRolesChangesNothing()
    {
        ShieldingLimits plain = Limits("sleep", 0.95, 0);
        ShieldingLimits shifted = Limits("sleep", 0.95, -37.5);
        Assert.Equal(plain.LowDb, shifted.LowDb, 1e-9);
        Assert.Equal(plain.HighDb, shifted.HighDb, 1e-9);
    }

    [Fact]
    public void MoreConfidenceWidensTheInterval()
    {
        ShieldingLimits narrow = Limits("sulfate", 0.8, 0);
        ShieldingLimits wide = Limits("sulfate", 0.99, 0);
        Assert.True(wide.LowDb < narrow.LowDb && wide.HighDb > narrow.HighDb);
    }

    // Second group as reference, first as covered.
    private static ShieldingLimits Limits(string name, double level, double shift)
    {
        string path = name == "sulfate" ? "published/epa-sulfate/sulfate.csv" : "published/student-sleep/sleep.csv";
        var groups = Fixtures.Cells(path).GroupBy(row => row[0]).ToList();
        RepeatedLevel covered = Level(groups[0], shift);
        RepeatedLevel reference = Level(groups[1], shift);
        var interval = new ShieldingInterval(new DetectorNoise(double.PositiveInfinity), new Confidence(level),
            new CoveredReadings(groups[0].Count(), groups[0].Count(), 0));
        return interval.For(new ReadingLevels(reference, covered, NoFloor, SystematicError.None));
    }

    private static RepeatedLevel Level(IEnumerable<string[]> rows, double shift)
    {
        double[] values = [.. rows.Select(row => double.Parse(row[1], CultureInfo.InvariantCulture) + shift)];
        return new RepeatedLevel(
            Sample.Mean(values),
            new Contribution(Sample.StandardDeviation(values) / Math.Sqrt(values.Length), values.Length - 1));
    }
}
