using MathNet.Numerics.LinearAlgebra;

namespace SweepStats.Statistics;

/// <summary>Climbs the likelihood of nested variances.</summary>
internal sealed class NestedClimb
{
    private const double Nudge = 1e-5;

    private readonly NestedData _data;

    // Variance ratio that the mean of a group has from the values in it: below it a component hardly shows.
    private readonly double[] _least;
    private readonly double[] _logs;

    /// <summary>Starts at given variances, none of them at the foot, where there is no way up.</summary>
    public NestedClimb(NestedData data, Nesting nesting, NestedVariances start)
    {
        _data = data;
        _least = [.. nesting.Sizes.Select(s => s.Length / (double)nesting.ValueCount)];
        _logs = [.. start.Levels.Select((v, k) => Math.Log(Math.Max(v / start.Residual, 0.1 * _least[k]) + _least[k]))];
    }

    /// <summary>Variance ratios reached.</summary>
    public double[] Ratios => [.. _logs.Select(Ratio)];

    /// <summary>The highest point within reach.</summary>
    public NestedLikelihood Summit(int steps, double flat)
    {
        NestedLikelihood here = At(_logs);
        double damping = 1e-3;
        for (int step = 0; step < steps; step++)
        {
            double[] slopes = Slopes(here, _logs);
            bool[] free = [.. slopes.Select((s, k) => !(AtFoot(k) && s >= 0))];
            if (slopes.Where((s, k) => free[k]).All(s => Math.Abs(s) < flat))
            {
                break;
            }

            double[][] bends = Bends();
            bool moved = false;
            for (int attempt = 0; attempt < 30 && !moved; attempt++, damping *= 10)
            {
                double[] trial = Moved(slopes, bends, free, damping);
                NestedLikelihood there = At(trial);
                // Within rounding a step counts as no worse, so that the last digits are reached.
                if (there.Criterion <= here.Criterion + (1e-13 * Math.Abs(here.Criterion)))
                {
                    trial.CopyTo(_logs, 0);
                    (here, moved) = (there, true);
                    damping *= 1e-3;
                }
            }

            if (!moved)
            {
                break;
            }

            damping = Math.Max(damping, 1e-12);
        }

        return here;
    }

    private double Ratio(double log, int k) => Math.Max(0, Math.Exp(log) - _least[k]);

    private bool AtFoot(int k) => Ratio(_logs[k], k) <= 1e-12 * _least[k];

    private NestedLikelihood At(double[] logs) => _data.At([.. logs.Select(Ratio)]);

    private static double[] Slopes(NestedLikelihood at, double[] logs) => [.. at.Slopes.Select((s, k) => s * Math.Exp(logs[k]))];

    private double[][] Bends()
    {
        var rows = new double[_logs.Length][];
        for (int k = 0; k < rows.Length; k++)
        {
            double[] up = [.. _logs], down = [.. _logs];
            (up[k], down[k]) = (up[k] + Nudge, Math.Max(down[k] - Nudge, Math.Log(_least[k])));
            double[] above = Slopes(At(up), up), below = Slopes(At(down), down);
            rows[k] = [.. above.Select((a, j) => (a - below[j]) / (up[k] - down[k]))];
        }

        return rows;
    }

    // Newton's step over the free components, damped until the bend points to a summit.
    private double[] Moved(double[] slopes, double[][] bends, bool[] free, double damping)
    {
        int[] open = [.. Enumerable.Range(0, free.Length).Where(k => free[k])];
        Matrix<double> bend = Matrix<double>.Build.Dense(open.Length, open.Length,
            (i, j) => (bends[open[i]][open[j]] + bends[open[j]][open[i]]) / 2);
        for (int i = 0; i < open.Length; i++)
        {
            bend[i, i] = Math.Max(bend[i, i], 1e-3 * Math.Abs(slopes[open[i]])) + (damping * (1 + Math.Abs(bend[i, i])));
        }

        Vector<double> step = bend.Solve(Vector<double>.Build.Dense(open.Length, i => slopes[open[i]]));
        double[] logs = [.. _logs];
        for (int i = 0; i < open.Length; i++)
        {
            int k = open[i];
            logs[k] = Math.Max(logs[k] - Math.Clamp(step[i], -2, 2), Math.Log(_least[k]));
        }

        return logs;
    }
}
