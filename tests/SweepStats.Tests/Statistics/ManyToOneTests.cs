using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class ManyToOneTests
{
    private static readonly double[] Mixed = [0.1, 0.5, 0.8, 0.95];

    private static readonly Dictionary<string, double[]> Sets = new()
    {
        ["equal5"] = [.. Enumerable.Repeat(Math.Sqrt(0.5), 5)],
        ["mixed4"] = Mixed,
        ["steep3"] = [0.3, 0.999, 0.9999],
        ["none6"] = new double[6],
        ["spread40"] = [.. Enumerable.Range(0, 40).Select(i => 0.2 + (0.77 * i / 39))],
        ["many500"] = [.. Enumerable.Repeat(0.6, 300), .. Enumerable.Repeat(0.75, 200)],
    };

    // Dunnett 1955, table 1, from memory (fixtures/published/many-to-one).
    [Fact]
    public void CriticalValuesAgreeWithThePublishedTable()
    {
        foreach (double[] row in Fixtures.Numbers("published/many-to-one/critical.csv"))
        {
            for (int k = 1; k <= 9; k++)
            {
                double[] equal = [.. Enumerable.Repeat(Math.Sqrt(0.5), k)];
                Agreement.Within(0.0055, row[k + 1], ManyToOne.Quantile(row[0], equal, row[1]), row[0], row[1], k);
            }
        }
    }

    // R, nested integrate(); and mvtnorm, whose randomised sum strays beyond its stated 1e-6 at times
    // (fixtures/oracles/many-to-one.R).
    [Fact]
    public void TailsAgreeWithTwoIntegralsOfR()
    {
        foreach ((double[] row, string[] cells) in Fixtures.Numbers("oracles/many-to-one.csv")
            .Zip(Fixtures.Cells("oracles/many-to-one.csv")))
        {
            double tail = ManyToOne.UpperTail(row[2], Sets[cells[0]], row[1]);
            Agreement.Within(1e-9, row[3], tail, row);
            if (double.IsFinite(row[4]))
            {
                Agreement.Within(1e-5 + row[5], row[4], tail, row);
            }
        }
    }

    [Fact]
    public void OneMeanAloneIsStudents()
    {
        foreach (double dof in (double[])[1, 2, 7.5, 40, 1e6, double.PositiveInfinity])
        {
            foreach (double loading in (double[])[0, 0.3, 0.95, 0.9999999, 1])
            {
                foreach (double t in (double[])[-2, 0, 1, 4, 20])
                {
                    Agreement.Within(1e-9, StudentT.UpperTail(t, dof), ManyToOne.UpperTail(t, [loading], dof), dof, loading, t);
                }

                Agreement.Relative(1e-6, StudentT.Quantile(0.95, dof), ManyToOne.Quantile(0.95, [loading], dof), dof, loading);
            }
        }
    }

    [Fact]
    public void WhatSharesNothingIsAPowerAndWhatSharesAllIsOne()
    {
        double below = 1 - StudentT.UpperTail(2, double.PositiveInfinity);
        Agreement.Within(1e-10, 1 - Math.Pow(below, 500), ManyToOne.UpperTail(2, new double[500], double.PositiveInfinity));
        Agreement.Within(1e-8, StudentT.UpperTail(2, 9), ManyToOne.UpperTail(2, [1, 1, 1, 1], 9));
        double close = ManyToOne.UpperTail(2, [0.999999, 0.999999, 0.999999], 9);
        Assert.InRange(close, StudentT.UpperTail(2, 9), StudentT.UpperTail(2, 9) + 1e-3);
    }

    [Fact]
    public void ManyDifferentLoadingsGiveWhatTheirProductGives()
    {
        // 200 loadings against a plain sum over fine steps of the shared variable.
        double[] loadings = [.. Enumerable.Range(0, 200).Select(i => 0.98 * Math.Sqrt(i / 200.0))];
        double below = 0;
        for (double z = -8; z < 8; z += 0.01)
        {
            double log = loadings.Sum(l => NormalTail.LogCdf((3 - (l * z)) / Math.Sqrt(1 - (l * l))));
            below += 0.01 * Math.Exp(log - (z * z / 2)) / Math.Sqrt(2 * Math.PI);
        }

        Agreement.Within(1e-9, 1 - below, ManyToOne.UpperTail(3, loadings, double.PositiveInfinity));
    }

    [Fact]
    public void OrderDoesNotMatterAndEachMeanMoreWidensTheTail()
    {
        double tail = ManyToOne.UpperTail(2, Mixed, 6);
        Assert.Equal(tail, ManyToOne.UpperTail(2, [0.95, 0.1, 0.8, 0.5], 6), 1e-15);
        Assert.True(ManyToOne.UpperTail(2, [.. Mixed, 0.6], 6) > tail);
        Assert.True(ManyToOne.UpperTail(2, Mixed, 5) > tail);
        for (double t = -4; t < 8; t += 0.5)
        {
            Assert.True(ManyToOne.UpperTail(t, Mixed, 6) > ManyToOne.UpperTail(t + 0.5, Mixed, 6));
        }
    }

    [Fact]
    public void QuantileAndTailUndoEachOther()
    {
        foreach (double dof in (double[])[2, 15, double.PositiveInfinity])
        {
            foreach (double probability in (double[])[0.05, 0.5, 0.95, 0.9999])
            {
                double t = ManyToOne.Quantile(probability, Mixed, dof);
                Agreement.Within(1e-9, 1 - probability, ManyToOne.UpperTail(t, Mixed, dof), dof, probability, t);
            }
        }
    }

    [Fact]
    public void DrawsExceedTAsOftenAsTheTailSays()
    {
        const int draws = 100_000;
        var random = new RandomSource(4);
        int above = 0;
        for (int i = 0; i < draws; i++)
        {
            double shared = random.Normal(), scatter = Math.Sqrt(random.Gamma(3) / 3);
            double largest = Mixed.Max(l => (l * shared) + (Math.Sqrt(1 - (l * l)) * random.Normal()));
            above += largest / scatter > 2 ? 1 : 0;
        }

        double tail = ManyToOne.UpperTail(2, Mixed, 6);
        Agreement.Within(4.5 * Math.Sqrt(tail * (1 - tail) / draws), tail, above / (double)draws);
    }

    [Fact]
    public void WhatHasNoAnswerIsRefused()
    {
        Assert.Throws<ArgumentException>(() => ManyToOne.UpperTail(1, [], 5));
        Assert.Throws<ArgumentException>(() => ManyToOne.UpperTail(1, [0.5, 1.1], 5));
        Assert.Throws<ArgumentException>(() => ManyToOne.UpperTail(1, [-0.1], 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => ManyToOne.UpperTail(1, [0.5], 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => ManyToOne.UpperTail(double.NaN, [0.5], 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => ManyToOne.Quantile(1, [0.5], 5));
    }
}
