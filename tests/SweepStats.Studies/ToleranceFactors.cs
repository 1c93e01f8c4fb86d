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
    /// Writes them to the console as the rows of <c>CensoredToleranceTable</c>: a row for each number of specimens, one more
    /// capped each time.
    /// </summary>
    public static int Print()
    {
        for (int count = CensoredToleranceTable.Fewest; count <= CensoredToleranceTable.Most; count++)
        {
            var factors = new double[count - CensoredTolerance.FewestSeen];
            Parallel.For(0, factors.Length, i => factors[i] =
                CensoredTolerance.Drawn(count, i + 1, CensoredToleranceTable.Share, CensoredToleranceTable.Confidence));
            Print(count, factors);
        }

        return 0;
    }

    private static void Print(int count, double[] factors)
    {
        Console.WriteLine($"{Indent}// {count}");
        var line = new StringBuilder(Indent);
        foreach (string factor in factors.Select(f => f.ToString("R", CultureInfo.InvariantCulture) + ", "))
        {
            if (line.Length + factor.Length > Widest)
            {
                Console.WriteLine(line.ToString().TrimEnd());
                line.Clear().Append(Indent);
            }

            line.Append(factor);
        }

        Console.WriteLine(line.ToString().TrimEnd());
    }
}
