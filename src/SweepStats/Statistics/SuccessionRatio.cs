namespace SweepStats.Statistics;

/// <summary>How much slower the changes from row to row are than those of rows in any order.</summary>
/// <remarks>
/// Formula: T = Σ c_k·S_k/Σ S_k, with S_k the power of cosine mode k of n rows and c_k = cos(πk/n). It is 1 − d/2, d the mean
/// square of successive differences over the variance (von Neumann's ratio), and lies between ±cos(π/n). Of independent normal
/// rows S_k are gamma variables of shape κ/2, κ the number of independent columns; T is then independent of their sum, has mean
/// 0, odd moments 0, and E T² = a·Σc²/[A(A + 1)], E T⁴ = [6a·Σc⁴ + 3(a·Σc²)²]/[A(A + 1)(A + 2)(A + 3)], a = κ/2, A = (n − 1)·a.
/// Exact where κ columns scatter alike, or one.
/// Against rows that go together like <see cref="SerialModel"/> of share 1 no other ratio of quadratic forms says more.
/// Dimensionless.
/// Source: von Neumann 1941, Annals of Mathematical Statistics 12, 367; Anderson 1971, The Statistical Analysis of Time Series,
/// 6.5 (from memory).
/// </remarks>
/// <param name="Value">T.</param>
/// <param name="Second">E T² of independent rows.</param>
/// <param name="Fourth">E T⁴ of independent rows.</param>
/// <param name="Weight">How much it says about a correlation, against other groups: A + 1.</param>
internal readonly record struct SuccessionRatio(double Value, double Second, double Fourth, double Weight)
{
    /// <summary>Fewest rows that say anything: of two, each succeeds the other.</summary>
    public const int FewestRows = 3;

    /// <param name="rows">At least three rows that scatter.</param>
    /// <param name="independentColumns">κ.</param>
    public static SuccessionRatio Of(SerialRows rows, double independentColumns)
    {
        double shape = independentColumns / 2, whole = rows.ModePowers.Length * shape;
        double ratio = 0, squares = 0, fourths = 0;
        for (int k = 0; k < rows.ModePowers.Length; k++)
        {
            double c = Math.Cos(Math.PI * (k + 1) / rows.Count);
            ratio += c * rows.ModePowers[k];
            squares += c * c;
            fourths += c * c * c * c;
        }

        double second = shape * squares;
        return new SuccessionRatio(
            ratio / rows.ModePowers.Sum(),
            second / (whole * (whole + 1)),
            ((6 * shape * fourths) + (3 * second * second)) / (whole * (whole + 1) * (whole + 2) * (whole + 3)),
            whole + 1);
    }
}
