using System.Globalization;
using System.Text;
using SweepStats.Statistics;

namespace SweepStats.Studies;

/// <summary>The factors of 95 %/95 % tolerance limits of censored samples, drawn for the table that the program keeps.</summary>
internal static class ToleranceFactors
{
    private const int Widest = 126;
    private const string Indent = "        ";

    /// <summary>
    /// Writes them to the console as <c>CensoredToleranceTable</c> holds them: by number of specimens, one more capped each time.
    /// </summary>
    public static int Print()
    {
        var line = new StringBuilder(Indent);
        foreach (string factor in Drawn().Select(f => f.ToString("R", CultureInfo.InvariantCulture) + ", "))
        {
            if (line.Length + factor.Length > Widest)
            {
                Console.WriteLine(line.ToString().TrimEnd());
                line.Clear().Append(Indent);
            }

            line.Append(factor);
        }

        Console.WriteLine(line.ToString().TrimEnd());
        return 0;
    }

    private static IEnumerable<double> Drawn() =>
        from more in Enumerable.Range(0, CensoredToleranceTable.Most - CensoredToleranceTable.Fewest + 1)
        from factor in Drawn(CensoredToleranceTable.Fewest + more)
        select factor;

    private static double[] Drawn(int count)
    {
        var factors = new double[count - CensoredTolerance.FewestSeen];
        Parallel.For(0, factors.Length, i => factors[i] =
            CensoredTolerance.Drawn(count, i + 1, CensoredToleranceTable.Share, CensoredToleranceTable.Confidence));
        return factors;
    }
}
