namespace SweepStats.Statistics;

/// <summary>A running sum that keeps what each addition rounds away.</summary>
/// <remarks>
/// Error: a unit in the last place of the sum plus n²·1e-32 of the sum of magnitudes. Source: Neumaier 1974, Zeitschrift für Angewandte Mathematik und
/// Mechanik 54, 39 (from memory). Values that are not finite make the sum not a number.
/// </remarks>
internal struct CompensatedSum
{
    private double _sum;
    private double _lost;

    public readonly double Value => _sum + _lost;

    public void Add(double value)
    {
        double next = _sum + value;
        // The smaller of the two loses its low digits; which one it is has to be asked, since values come in any order.
        _lost += Math.Abs(_sum) >= Math.Abs(value) ? _sum - next + value : value - next + _sum;
        _sum = next;
    }
}
