using SweepStats.Receivers;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Receivers;

/// <summary>Against R 4.2.2 with survival 3.5-3; fixtures/oracles/receivers.R.</summary>
public sealed class ReceiverOracles
{
    [Fact]
    public void TheLikelihoodHasTheSummitOfAnIntervalCensoredFit()
    {
        var values = Fixtures.Cells("oracles/receivers-values.csv").GroupBy(row => row[0])
            .ToDictionary(g => g.Key, g => g.ToArray());
        foreach (string[] fit in Fixtures.Cells("oracles/receivers-fits.csv"))
        {
            ReceiverObservation[] stations = [.. values[fit[0]].Select(Read)];
            double Log(double away) => MarginLikelihood.Log([.. stations], Number(fit[1]) + away);
            Agreement.Within(1e-8, Number(fit[2]), Log(0));
            Assert.True(Log(0) > Log(-0.01) && Log(0) > Log(0.01), fit[0]);
        }
    }

    /// <summary>The summit lies within the interval that holds whichever way the uncertainty is read.</summary>
    [Fact]
    public void TheIntervalHoldsTheFitOfR()
    {
        var values = Fixtures.Cells("oracles/receivers-values.csv").GroupBy(row => row[0])
            .ToDictionary(g => g.Key, g => g.ToArray());
        foreach (string[] fit in Fixtures.Cells("oracles/receivers-fits.csv"))
        {
            ReceiverObservation[] stations = [.. values[fit[0]].Select(Read)];
            Assert.InRange(Number(fit[1]), MarginBound.AtLeast([.. stations], 0.975)!.Value,
                MarginBound.AtMost([.. stations], 0.975)!.Value);
        }
    }

    [Fact]
    public void JointProbabilitiesAreThoseOfTheLattice()
    {
        foreach (IGrouping<double, double[]> rows in Fixtures.Numbers("oracles/receivers-joint.csv").GroupBy(row => row[0]))
        {
            double[][] all = [.. rows];
            var pattern = new SharedPattern([.. all.Select(row => (object?)row[3])], [.. all.Select(row => row[2])]);
            Agreement.Within(1e-6, all[0][4], SharedNormals.AllBelow([.. all.Select(row => row[1])], pattern), rows.Key);
        }
    }

    /// <summary>Midway between one silent and one heard of like uncertainty ln L is twice ln Φ(5/3).</summary>
    [Fact]
    public void TheLikelihoodMidwayBetweenTwoAlikeIsTheHandWorkedOne() =>
        Assert.Equal(2 * Math.Log(0.9522096477271853), MarginLikelihood.Log([Station.Silent(60), Station.Heard(70)], 65), 1e-9);

    private static ReceiverObservation Read(string[] row) =>
        row[3] == "1" ? Station.Silent(Number(row[1]), Number(row[2])) : Station.Heard(Number(row[1]), Number(row[2]));

    private static double Number(string cell) => double.Parse(cell, System.Globalization.CultureInfo.InvariantCulture);
}
