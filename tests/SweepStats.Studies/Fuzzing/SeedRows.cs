using System.Globalization;
using System.Text;

namespace SweepStats.Studies.Fuzzing;

/// <summary>Rows of invented readings for the seeds.</summary>
internal static class SeedRows
{
    /// <summary>
    /// Rows after a composite format: {0} frequency, {1} to {3} levels near −70, −60 and 12, {4} the row's number from 1.
    /// </summary>
    public static string Of(int rows, double start, double step, string format)
    {
        var text = new StringBuilder();
        for (int i = 0; i < rows; i++)
        {
            double ripple = Math.Sin(0.7 * i);
            text.AppendFormat(CultureInfo.InvariantCulture, format, start + (step * i), -70 + (2 * ripple), -60 - ripple,
                12 + ripple, i + 1).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>The same with decimal commas.</summary>
    public static string WithCommas(int rows, double start, double step, string format) =>
        Of(rows, start, step, format).Replace('.', ',');

    /// <summary>Touchstone points: a frequency, then pairs, a given number on a line.</summary>
    public static string Points(int rows, int pairs, int pairsOnLine, string pair)
    {
        var text = new StringBuilder();
        for (int i = 0; i < rows; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{100 + (50 * i)}");
            for (int p = 0; p < pairs; p++)
            {
                text.Append(p > 0 && p % pairsOnLine == 0 ? "\n   " : "  ");
                text.AppendFormat(CultureInfo.InvariantCulture, pair, 0.5 + (0.4 * Math.Sin(i + p)), -20 - i - p,
                    (17 * (i + p)) % 180);
            }

            text.Append('\n');
        }

        return text.ToString();
    }
}
