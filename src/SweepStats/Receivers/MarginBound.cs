using MathNet.Numerics.RootFinding;
using SweepStats.Statistics;

namespace SweepStats.Receivers;

/// <summary>What stations that fell silent show at least of the shielding, and what those still heard show at most.</summary>
/// <remarks>
/// <para>
/// The shielding S is at least the true margin of each silent station and at most that of each one still heard: bounds of which
/// the largest, or the smallest, holds. Stated margins err normally with known uncertainties. A value s is refuted from below
/// where T = max over the silent of (m − s)/u is larger than chance allows: where P(e_j ≤ max(T, z_j) + d_j for all stations j)
/// reaches the confidence, with z_j = (m_j − s)/u_j and e_j the errors in units of u_j. The bound is the least s that is not
/// refuted. One station alone gives m − z·u.
/// </para>
/// <para>
/// The largest of many stated margins is apt to be one that is stated too high: so all stations count, and more silent ones of
/// like margin do not raise the bound. One that lies far below s cannot matter: d_j = max(0, −z_j − z_β) is what its true margin
/// lies below s at least, all of them at once with probability 1 − β, and β, a fiftieth of what may be missed, is paid for it.
/// </para>
/// <para>
/// It holds whichever way uncertainty is read: true margins scatter about the stated ones, or stated ones about the true. An
/// interval by the likelihood of <see cref="MarginLikelihood"/> holds in the first case only. Exact but for
/// <see cref="MarginErrors.AllBelow"/>, which errs to the wide side; a limit is found to 1e-7 dB. Source: the two steps, Romano,
/// Shaikh and Wolf 2014, Econometrica 82, 1979 (from memory).
/// </para>
/// </remarks>
internal static class MarginBound
{
    private const double PaidForSelection = 0.02, Settled = 1e-7, Accuracy = 1e-9, Start = 6, Farthest = 1e6;
    private const int MostSteps = 100;

    /// <summary>Lower bound in dB; null where no station fell silent.</summary>
    /// <param name="observations">Evidence at one shielding.</param>
    /// <param name="level">One-sided, above one half.</param>
    public static double? AtLeast(ImmutableArray<ReceiverObservation> observations, double level) =>
        Of(observations, level, [.. observations.Select(o => !o.HeardCovered)], 1);

    /// <summary>Upper bound in dB; null where none was heard.</summary>
    /// <param name="observations">Evidence at one shielding.</param>
    /// <param name="level">One-sided, above one half.</param>
    public static double? AtMost(ImmutableArray<ReceiverObservation> observations, double level) =>
        -Of(observations, level, [.. observations.Select(o => o.HeardCovered)], -1);

    // Turned over, "heard at margin m" is "silent at margin −m", and the errors are as likely either way.
    private static double? Of(ImmutableArray<ReceiverObservation> observations, double level, bool[] bounding, int sign)
    {
        if (!bounding.Contains(true))
        {
            return null;
        }

        var errors = new MarginErrors(observations);
        double paid = observations.Length == 1 ? 0 : PaidForSelection * (1 - level);
        var refuted = new Refutation(errors, [.. errors.Margins.Select(m => sign * m)], bounding) { Level = level + paid };
        double slackFrom = paid > 0 ? -NormalQuantile(paid / observations.Length) : double.PositiveInfinity;
        double bound = refuted.Until(new double[observations.Length]);
        for (int step = 0; step < MostSteps; step++)
        {
            double next = refuted.Until(refuted.Slack(bound, slackFrom), bound);
            bool settled = next - bound < Settled;
            bound = Math.Max(bound, next);
            if (settled)
            {
                break;
            }
        }

        return bound;
    }

    private static double NormalQuantile(double probability) => StudentT.Quantile(probability, double.PositiveInfinity);

    /// <summary>Which values of the shielding the stations refute from below.</summary>
    private sealed class Refutation(MarginErrors errors, double[] margins, bool[] bounding)
    {
        /// <summary>Probability from which on a value is refuted: the confidence, and what the slack is paid with.</summary>
        public required double Level { get; init; }

        /// <summary>How far each true margin lies below s at least, in its uncertainties.</summary>
        public double[] Slack(double s, double from) =>
            [.. margins.Select((m, i) => Math.Max(0, ((s - m) / errors.Uncertainties[i]) - from))];

        /// <summary>The least s that is not refuted, with the slack held fixed: it only grows with s, and refutes more.</summary>
        /// <param name="slack">The slack.</param>
        /// <param name="from">A value that is refuted, if one is known.</param>
        public double Until(double[] slack, double? from = null)
        {
            double high = Enumerable.Range(0, margins.Length).Where(i => bounding[i]).Max(i => margins[i]);
            double low = from ?? high - FirstStep(slack, high);
            // At the largest margin itself chance is one half; where rounding hides the root, the wider limit stands.
            return Excess(low, slack) > 0
                && Brent.TryFindRoot(s => Excess(s, slack), low, high, Accuracy, MostSteps, out double root) ? root : low;
        }

        private double FirstStep(double[] slack, double high)
        {
            double step = Start * errors.Uncertainties.Max();
            while (Excess(high - step, slack) <= 0 && step < Farthest)
            {
                step *= 2;
            }

            return step;
        }

        private double Excess(double s, double[] slack)
        {
            Span<double> thresholds = stackalloc double[margins.Length];
            double most = double.NegativeInfinity;
            for (int i = 0; i < margins.Length; i++)
            {
                thresholds[i] = (margins[i] - s) / errors.Uncertainties[i];
                most = bounding[i] ? Math.Max(most, thresholds[i]) : most;
            }

            for (int i = 0; i < margins.Length; i++)
            {
                thresholds[i] = Math.Max(most, thresholds[i]) + slack[i];
            }

            return errors.AllBelow(thresholds) - Level;
        }
    }
}
