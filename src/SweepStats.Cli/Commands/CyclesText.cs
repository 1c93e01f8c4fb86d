using System.Globalization;

namespace SweepStats.Cli.Commands;

/// <summary>Numbers of cycles as they are written on the command line: 0,5,10.</summary>
internal static class CyclesText
{
    /// <summary>The numbers as written; none, with a sentence among the wrong, where one is no number or stands twice.</summary>
    public static ImmutableArray<double> Parse(string text, List<string> wrong)
    {
        var cycles = ImmutableArray.CreateBuilder<double>();
        foreach (string part in text.Split(','))
        {
            if (!double.TryParse(part, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
                || !double.IsFinite(value) || cycles.Contains(value))
            {
                wrong.Add($"--cycles {text}: cycles read 0,5,10,20, each once");
                return [];
            }

            cycles.Add(value);
        }

        return cycles.ToImmutable();
    }
}
