using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class GeneralisedEsdTests
{
    [Fact]
    public void FiveValuesGiveWhatHandArithmeticGives()
    {
        // −1, 0, 0, 1, 10: mean 2, squares 82, R₁ = 8/√20.5. Left −1, 0, 0, 1: R₂ = 1/√(2/3).
        // λ₂ with 4 values: t of 2 degrees of freedom in closed form, (2p − 1)/√(2p(1 − p)) at p = 1 − 0.05/8.
        GeneralisedEsd test = GeneralisedEsd.Of([-1, 0, 0, 1, 10], 2, 0.05);
        Agreement.Relative(1e-15, 8 / Math.Sqrt(20.5), test.Statistics[0]);
        Agreement.Relative(1e-15, 1 / Math.Sqrt(2.0 / 3), test.Statistics[1]);
        const double p = 1 - (0.05 / 8);
        double t = ((2 * p) - 1) / Math.Sqrt(2 * p * (1 - p));
        Agreement.Relative(1e-12, t * 3 / Math.Sqrt((2 + (t * t)) * 4), test.CriticalValues[1]);
        Assert.Equal([4], test.Outliers);
    }

    [Fact]
    public void ThreeOutliersOfRosnersFiftyFourAreFoundAlthoughTheFirstTwoHide()
    {
        // Rosner 1983; table as in the NIST handbook, 1.3.5.17.3, digits cut off.
        double[] values = Case("rosner");
        GeneralisedEsd test = GeneralisedEsd.Of(values, 10, 0.05);
        Assert.Equal([6.01, 5.42, 5.34], test.Outliers.Select(place => values[place]));
        foreach (double[] row in Fixtures.Numbers("published/rosner-1983/table.csv"))
        {
            Assert.Equal(row[1], Math.Truncate(test.Statistics[(int)row[0] - 1] * 1000) / 1000, 1e-12);
            Assert.Equal(row[2], Math.Truncate(test.CriticalValues[(int)row[0] - 1] * 1000) / 1000, 1e-12);
        }

        Assert.True(test.Statistics[0] < test.CriticalValues[0] && test.Statistics[1] < test.CriticalValues[1]);
        Assert.Empty(GeneralisedEsd.Of(values, 2, 0.05).Outliers);
    }

    [Fact]
    public void BothNaphthaleneOutliersAreFound()
    {
        // US EPA, Unified Guidance 2009, example 12-4.
        double[] values = Case("naphthalene");
        GeneralisedEsd test = GeneralisedEsd.Of(values, 2, 0.05);
        Assert.Equal([35.45, 23.23], test.Outliers.Select(place => values[place]));
        Assert.Equal(3.930957, test.Statistics[0], 5e-7);
        Assert.Equal(4.160223, test.Statistics[1], 5e-7);
        Assert.Equal(2.821681, test.CriticalValues[0], 5e-7);
        Assert.Equal(2.801551, test.CriticalValues[1], 5e-7);
    }

    [Fact]
    public void PublishedSamplesAgreeWithR()
    {
        string[][] cells = Fixtures.Cells("oracles/outliers-esd.csv");
        double[][] rows = Fixtures.Numbers("oracles/outliers-esd.csv");
        foreach (IGrouping<(string Case, double Level), int> part in Enumerable.Range(0, rows.Length)
            .GroupBy(i => (cells[i][0], rows[i][1])))
        {
            GeneralisedEsd test = GeneralisedEsd.Of(Case(part.Key.Case), part.Count(), part.Key.Level);
            foreach (double[] row in part.Select(i => rows[i]))
            {
                int i = (int)row[2] - 1;
                Agreement.Relative(1e-11, row[3], test.Statistics[i], row);
                Agreement.Relative(1e-12, row[4], test.CriticalValues[i], row);
                Assert.True(i >= test.Outliers.Count || test.Outliers[i] == (int)row[5]);
            }

            Assert.Equal(part.Where(i => rows[i][3] > rows[i][4]).Select(i => (int)rows[i][2]).DefaultIfEmpty(0).Max(),
                test.Outliers.Count);
        }
    }

    [Fact]
    public void ShiftScaleAndOrderChangeNothing()
    {
        double[] values = Case("naphthalene");
        GeneralisedEsd plain = GeneralisedEsd.Of(values, 4, 0.05);
        GeneralisedEsd[] others =
        [
            GeneralisedEsd.Of([.. values.Select(v => v - 90)], 4, 0.05),
            GeneralisedEsd.Of([.. values.Select(v => v * -3)], 4, 0.05), GeneralisedEsd.Of([.. values.Reverse()], 4, 0.05),
        ];
        foreach (GeneralisedEsd other in others)
        {
            Assert.All(plain.Statistics.Zip(other.Statistics), pair => Agreement.Relative(1e-12, pair.First, pair.Second));
            Assert.Equal(plain.CriticalValues, other.CriticalValues);
        }

        Assert.Equal(plain.Outliers, others[1].Outliers);
        Assert.Equal(plain.Outliers, others[2].Outliers.Select(place => values.Length - 1 - place));
    }

    [Fact]
    public void TheFirstStepIsGrubbsTest()
    {
        double[] values = Case("mass");
        GeneralisedEsd test = GeneralisedEsd.Of(values, 1, 0.05);
        Assert.Equal(Grubbs.Of(values).Statistic, test.Statistics[0], 1e-13);
        Assert.Equal(Grubbs.CriticalValue(8, 0.05), test.CriticalValues[0]);
        Assert.Equal([Grubbs.Of(values).Index], test.Outliers);
    }

    [Fact]
    public void ValuesWithoutScatterHaveNoOutliers()
    {
        Assert.Empty(GeneralisedEsd.Of([2, 2, 2, 2, 2], 3, 0.05).Outliers);
        GeneralisedEsd one = GeneralisedEsd.Of([2, 2, 2, 2, 9], 3, 0.05);
        Assert.Equal([4], one.Outliers);
        Assert.Equal([0, 0], one.Statistics.Skip(1));
    }

    [Fact]
    public void CleanSamplesAreSuspectedAsOftenAsRMeasures()
    {
        // At 5 %: 10 values and k = 2 give 6.8 %, 25 values 5.4 %; only k = 1 keeps its level however few there are. Slack: four
        // binomial deviations of both.
        const int draws = 10_000;
        foreach (double[] row in Fixtures.Numbers("oracles/outliers-size.csv"))
        {
            var random = new RandomSource(1983);
            int alarms = 0;
            for (int draw = 0; draw < draws; draw++)
            {
                double[] values = [.. Enumerable.Range(0, (int)row[0]).Select(_ => random.Normal())];
                alarms += GeneralisedEsd.Of(values, (int)row[1], 0.05).Outliers.Count > 0 ? 1 : 0;
            }

            Agreement.Within(4 * Math.Sqrt(row[3] * (1 - row[3]) * ((1.0 / draws) + (1 / row[2]))), row[3],
                (double)alarms / draws, row);
        }
    }

    [Fact]
    public void WhatHasNoAnswerIsRefused()
    {
        Assert.Throws<ArgumentException>(() => GeneralisedEsd.Of([1, 2], 1, 0.05));
        Assert.Throws<ArgumentException>(() => GeneralisedEsd.Of([1, 2, double.NaN], 1, 0.05));
        Assert.Throws<ArgumentOutOfRangeException>(() => GeneralisedEsd.Of([1, 2, 3], 2, 0.05));
        Assert.Throws<ArgumentOutOfRangeException>(() => GeneralisedEsd.Of([1, 2, 3], 0, 0.05));
        Assert.Throws<ArgumentOutOfRangeException>(() => GeneralisedEsd.Of([1, 2, 3], 1, 1));
    }

    /// <summary>The samples of fixtures/oracles/outliers.R by their names there.</summary>
    internal static double[] Case(string name)
    {
        (string path, int column) = name switch
        {
            "rosner" => ("rosner-1983/values.csv", 0),
            "naphthalene" => ("epa-naphthalene/naphthalene.csv", 2),
            "mass" => ("nist-grubbs/mass.csv", 0),
            "speed" => ("nist-strd-univariate/Michelso.csv", 0),
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, "No such sample."),
        };
        return [.. Fixtures.Numbers($"published/{path}").Select(row => row[column])];
    }
}
