namespace SweepStats.Statistics;

/// <summary>A running sum that keeps what each addition rounds away.</summary>
/// <remarks>
/// Error: a unit in the last place of the sum plus n²·1e-32 of the sum of magnitudes. Source: Neumaier 1974, Zeitschrift für
/// Angewandte Mathematik und Mechanik 54, 39 (from memory); what an addition loses by Knuth's six operations (The Art of Computer
/// Programming 2, 4.2.2, theorem B, from memory), which need not ask which of the two is the larger. Values that are not finite
/// make the sum not a number.
/// </remarks>
internal struct CompensatedSum
{
    private double _sum;
    private double _lost;

    public readonly double Value => _sum + _lost;

    public void Add(double value)
    {
        double next = _sum + value;
        double taken = next - _sum;
        _lost += (_sum - (next - taken)) + (value - taken);
        _sum = next;
    }
}
