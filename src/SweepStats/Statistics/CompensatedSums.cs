using System.Numerics;

namespace SweepStats.Statistics;

/// <summary>
/// As many running sums beside each other as a register holds, each with the bits of a <see cref="CompensatedSum"/>.
/// </summary>
internal struct CompensatedSums
{
    private Vector<double> _sum;
    private Vector<double> _lost;

    /// <summary>The sums so far, one a lane.</summary>
    public readonly Vector<double> Value => _sum + _lost;

    /// <summary>Adds a value to each sum.</summary>
    public void Add(Vector<double> values)
    {
        Vector<double> next = _sum + values;
        Vector<double> taken = next - _sum;
        _lost += (_sum - (next - taken)) + (values - taken);
        _sum = next;
    }
}
