namespace SweepStats.Doubts;

/// <summary>About how much rows scatter about what they share, straight lines taken out, in any window of columns.</summary>
/// <remarks>
/// From running sums, so that a window costs the same whatever its width, where <see cref="StraightenedRows"/> goes through all of it. Unit: squared one of the
/// values. Error: some 1e-16 of the sum of the squares about the rows' first values, and of their sums with
/// the place, which grow with the square of the columns: below <see cref="Tellable"/> for levels in dB up to some 100 000 columns, where windows grow too.
/// </remarks>
internal sealed class RunningScatter
{
    /// <summary>Below this rounding may have a share in it.</summary>
    public const double Tellable = 1e-6;

    private readonly RunningSums[] _rows;
    private readonly RunningSums _together;

    /// <param name="rows">At least two rows of the same length.</param>
    public RunningScatter(double[][] rows)
    {
        _rows = new RunningSums[rows.Length];
        var together = new double[rows[0].Length];
        for (int j = 0; j < rows.Length; j++)
        {
            _rows[j] = new RunningSums(rows[j]);
            for (int p = 0; p < together.Length; p++)
            {
                together[p] += rows[j][p] - rows[j][0];
            }
        }

        _together = new RunningSums(together);
    }

    /// <summary>Mean square of a row less mean product of two: the scatter of a single row.</summary>
    /// <param name="columns">Two columns at least.</param>
    public double In(Range columns)
    {
        int count = _rows.Length;
        double own = _rows.Sum(row => row.AboutLine(columns));
        double between = (_together.AboutLine(columns) - own) / (count - 1);
        return (own - Math.Max(0, between)) / count / (columns.End.Value - columns.Start.Value);
    }

    // Σy, Σp·y and Σy² of the columns before each, y from the row's first value.
    private sealed class RunningSums
    {
        private readonly double[] _plain;
        private readonly double[] _turned;
        private readonly double[] _squared;

        public RunningSums(double[] row)
        {
            (_plain, _turned, _squared) = (new double[row.Length + 1], new double[row.Length + 1], new double[row.Length + 1]);
            double plain = 0, turned = 0, squared = 0;
            for (int p = 0; p < row.Length; p++)
            {
                double value = row[p] - row[0];
                _plain[p + 1] = plain += value;
                _turned[p + 1] = turned += p * value;
                _squared[p + 1] = squared += value * value;
            }
        }

        // Sum of the squares about the line of least squares.
        public double AboutLine(Range columns)
        {
            (int start, int end) = (columns.Start.Value, columns.End.Value);
            double count = end - start, plain = _plain[end] - _plain[start];
            double turned = _turned[end] - _turned[start] - ((start + ((count - 1) / 2)) * plain);
            return _squared[end] - _squared[start] - (plain * plain / count) - (turned * turned / (count * ((count * count) - 1) / 12));
        }
    }
}
