using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

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
    // Columns of fewer are summed beside each other, to the same digits as one by itself.
    private const int Many = 64;

    private double _sum;
    private double _lost;

    /// <summary>The sum so far.</summary>
    public readonly double Value => _sum + _lost;

    /// <summary>The sum of values. Many are taken four at a time on every machine, so that none has other digits.</summary>
    public static double Of(ReadOnlySpan<double> values)
    {
        var sum = new CompensatedSum();
        int fours = values.Length < Many ? 0 : values.Length / 4 * 4;
        sum.AddFours(MemoryMarshal.Cast<double, Vector128<double>>(values[..fours]));
        foreach (double value in values[fours..])
        {
            sum.Add(value);
        }

        return sum.Value;
    }

    /// <summary>Adds a value.</summary>
    public void Add(double value)
    {
        double next = _sum + value;
        double taken = next - _sum;
        _lost += (_sum - (next - taken)) + (value - taken);
        _sum = next;
    }

    // An addition waits for the one before; two of two numbers go on beside each other.
    private void AddFours(ReadOnlySpan<Vector128<double>> twos)
    {
        Twos even = default, odd = default;
        for (int i = 0; i + 1 < twos.Length; i += 2)
        {
            even.Add(twos[i]);
            odd.Add(twos[i + 1]);
        }

        even.AddTo(ref this);
        odd.AddTo(ref this);
    }

    private struct Twos
    {
        private Vector128<double> _sum;
        private Vector128<double> _lost;

        /// <summary>Adds two values, each to the sum of its own lane.</summary>
        public void Add(Vector128<double> values)
        {
            Vector128<double> next = _sum + values, taken = next - _sum;
            _lost += (_sum - (next - taken)) + (values - taken);
            _sum = next;
        }

        /// <summary>Adds both sums and what they lost, always in this order.</summary>
        public readonly void AddTo(ref CompensatedSum whole)
        {
            whole.Add(_sum[0]);
            whole.Add(_sum[1]);
            whole.Add(_lost[0]);
            whole.Add(_lost[1]);
        }
    }
}
