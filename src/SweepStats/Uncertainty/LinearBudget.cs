using SweepStats.Statistics;

namespace SweepStats.Uncertainty;

/// <summary>What one input contributes to the uncertainty of a result.</summary>
/// <param name="Name">Which input.</param>
/// <param name="StandardUncertainty">Standard uncertainty of the input, in its unit.</param>
/// <param name="Sensitivity">How much the result changes per unit of the input.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the standard uncertainty.</param>
public sealed record BudgetLine(string Name, double StandardUncertainty, double Sensitivity, double DegreesOfFreedom)
{
    /// <summary>Contribution to the standard uncertainty of the result, |sensitivity|·u, in its unit.</summary>
    public double Contribution => Math.Abs(Sensitivity) * StandardUncertainty;
}

/// <summary>The uncertainty of a result by the law of propagation: the model as a plane at the estimates. Immutable.</summary>
/// <remarks>
/// Formula: u² = ΣΣ cᵢcⱼu(xᵢ)u(xⱼ)r(xᵢ, xⱼ), sensitivities c by central differences over one standard uncertainty each way;
/// effective degrees of freedom by Welch and Satterthwaite, which knows no correlation. Assumes a model that is nearly straight
/// over the uncertainties: <see cref="SecondOrderVariance"/> and <see cref="MonteCarlo"/> show whether it is. Source: JCGM
/// 100:2008, 5.1.2, 5.2.2, G.4.1.
/// </remarks>
public sealed record LinearBudget
{
    // Over a small share of the uncertainty a difference quotient is the slope there; smaller still, rounding takes over.
    private const double Step = 1e-3;

    private LinearBudget()
    {
    }

    /// <summary>Value of the model at the estimates.</summary>
    public required double Estimate { get; init; }

    /// <summary>What each input contributes, in their order.</summary>
    public required ImmutableArray<BudgetLine> Lines { get; init; }

    /// <summary>Combined standard uncertainty, in the unit of the result.</summary>
    public required double StandardUncertainty { get; init; }

    /// <summary>Effective degrees of freedom.</summary>
    public required double DegreesOfFreedom { get; init; }

    /// <summary>
    /// What the bend of the model adds to the variance: Σ Σ [½(∂²f/∂xᵢ∂xⱼ)² + (∂f/∂xᵢ)(∂³f/∂xᵢ∂xⱼ²)]u²u². Source: JCGM 100:2008,
    /// note to 5.1.2.
    /// </summary>
    public required double SecondOrderVariance { get; init; }

    /// <summary>Coverage factor for a two-sided interval: the t quantile at the effective degrees of freedom.</summary>
    /// <param name="confidence">Two-sided level.</param>
    /// <param name="wholeDegrees">Cut the degrees of freedom down to a whole number, as printed tables of t need.</param>
    public double CoverageFactor(Confidence confidence, bool wholeDegrees = false) =>
        StudentT.Quantile(confidence.TwoSidedQuantile,
            wholeDegrees && double.IsFinite(DegreesOfFreedom) ? Math.Max(1, Math.Floor(DegreesOfFreedom)) : DegreesOfFreedom);

    /// <summary>Coverage factor times standard uncertainty, in the unit of the result.</summary>
    public double ExpandedUncertainty(Confidence confidence) =>
        StandardUncertainty == 0 ? 0 : CoverageFactor(confidence) * StandardUncertainty;

    /// <summary>Interval estimate ± coverage factor × standard uncertainty.</summary>
    public Interval Interval(Confidence confidence)
    {
        double half = ExpandedUncertainty(confidence);
        return new Interval(Estimate - half, Estimate + half);
    }

    /// <summary>Propagates uncertainties through a model.</summary>
    /// <param name="model">The model.</param>
    /// <param name="inputs">Its inputs, in its order.</param>
    /// <param name="correlation">r(xᵢ, xⱼ) as rows; null where all are independent.</param>
    /// <exception cref="ArgumentException">No input, or a matrix of another size.</exception>
    public static LinearBudget Of(MeasurementModel model, IReadOnlyList<InputQuantity> inputs, double[][]? correlation = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        Correlations.Require(inputs, correlation);
        double[] at = [.. inputs.Select(i => i.Estimate)];
        ImmutableArray<BudgetLine> lines =
        [
            .. inputs.Select((input, i) => new BudgetLine(
                input.Name, input.StandardUncertainty, Slope(model, at, i, Small(input)), input.Freedom)),
        ];
        return new LinearBudget
        {
            Estimate = model(at),
            Lines = lines,
            StandardUncertainty = Math.Sqrt(Covariance(lines, lines, correlation)),
            DegreesOfFreedom =
                WelchSatterthwaite.DegreesOfFreedom([.. lines.Select(l => new Contribution(l.Contribution, l.DegreesOfFreedom))]),
            SecondOrderVariance = SecondOrder(model, at, inputs),
        };
    }

    /// <summary>Correlation of two results of the same inputs. Source: JCGM 100:2008, H.2.3.</summary>
    public static double Correlation(LinearBudget a, LinearBudget b, double[][]? correlation = null)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        return Covariance(a.Lines, b.Lines, correlation) / (a.StandardUncertainty * b.StandardUncertainty);
    }

    private static double Covariance(ImmutableArray<BudgetLine> a, ImmutableArray<BudgetLine> b, double[][]? correlation)
    {
        var sum = new CompensatedSum();
        for (int i = 0; i < a.Length; i++)
        {
            for (int j = 0; j < b.Length; j++)
            {
                double r = i == j ? 1 : correlation?[i][j] ?? 0;
                sum.Add(r * a[i].Sensitivity * a[i].StandardUncertainty * b[j].Sensitivity * b[j].StandardUncertainty);
            }
        }

        return sum.Value;
    }

    private static double Small(InputQuantity input) => input.StandardUncertainty * Step;

    private static double Slope(MeasurementModel model, double[] at, int input, double step) =>
        step == 0 ? 0 : (Moved(model, at, new Shift(input, step)) - Moved(model, at, new Shift(input, -step))) / (2 * step);

    private static double Moved(MeasurementModel model, double[] at, params ReadOnlySpan<Shift> by)
    {
        double[] moved = [.. at];
        foreach ((int input, double step) in by)
        {
            moved[input] += step;
        }

        return model(moved);
    }

    // Differences over whole uncertainties: third derivatives need room, and it is over that room that the bend counts.
    private static double SecondOrder(MeasurementModel model, double[] at, IReadOnlyList<InputQuantity> inputs)
    {
        double centre = model(at);
        var sum = new CompensatedSum();
        for (int i = 0; i < at.Length; i++)
        {
            for (int j = 0; j < at.Length; j++)
            {
                Shift u = new(i, inputs[i].StandardUncertainty);
                Shift v = new(j, inputs[j].StandardUncertainty);
                Shift back = new(i, -u.Step);
                Shift down = new(j, -v.Step);
                double first = (Moved(model, at, u) - Moved(model, at, back)) / 2;
                double mixed = (Moved(model, at, u, v) - Moved(model, at, u, down) - Moved(model, at, back, v)
                    + Moved(model, at, back, down)) / 4;
                double bendAbove = Moved(model, at, u, v) - (2 * Moved(model, at, u)) + Moved(model, at, u, down);
                double bendBelow = Moved(model, at, back, v) - (2 * Moved(model, at, back)) + Moved(model, at, back, down);
                double curve = i == j ? Moved(model, at, u) - (2 * centre) + Moved(model, at, back) : mixed;
                double third = i == j ? (Moved(model, at, u, u) - (2 * Moved(model, at, u)) + (2 * Moved(model, at, back))
                    - Moved(model, at, back, back)) / 2 : (bendAbove - bendBelow) / 2;
                sum.Add((curve * curve / 2) + (first * third));
            }
        }

        return sum.Value;
    }

    /// <summary>An input by its place, and how far it is moved, in its own unit.</summary>
    private readonly record struct Shift(int Input, double Step);
}
