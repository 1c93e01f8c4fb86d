using System.Text;

namespace SweepStats.Files.Traces.Touchstone;

/// <summary>The option line of a Touchstone file. What it leaves out has the standard's default: GHz, S, MA.</summary>
internal sealed record TouchstoneOptions(FrequencyUnit FrequencyUnit, TouchstoneFormat Format)
{
    /// <summary>Understands an option line; words in any order and case.</summary>
    public static TouchstoneOptions? Parse(ReadOnlySpan<byte> line, int number, FaultList faults)
    {
        var options = new TouchstoneOptions(FrequencyUnit.Gigahertz, TouchstoneFormat.MagnitudeAngle);
        string text = Encoding.UTF8.GetString(line).Split('!')[0].Replace('#', ' ');
        string[] words = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        foreach (string word in words)
        {
            string upper = word.ToUpperInvariant();
            if (upper == "R")
            {
                // The reference resistance follows, plain or complex; it does not matter to a ratio.
                break;
            }

            if (upper is "Y" or "Z" or "G" or "H")
            {
                faults.Add(number, $"the file holds {upper} parameters, which are no attenuation", "export S parameters");
                return null;
            }

            TouchstoneOptions? next = upper switch
            {
                "S" => options,
                "DB" => options with { Format = TouchstoneFormat.DecibelAngle },
                "MA" => options with { Format = TouchstoneFormat.MagnitudeAngle },
                "RI" => options with { Format = TouchstoneFormat.RealImaginary },
                _ => FrequencyUnits.Parse(upper) is { } unit ? options with { FrequencyUnit = unit } : null,
            };
            if (next is null)
            {
                faults.Add(number, $"the option line holds '{word}', which is none of its words", "correct the line, for example '# MHz S DB R 50'");
                return null;
            }

            options = next;
        }

        return AfterResistance(words, options, number, faults);
    }

    // Some programs write the resistance first: "# R 50 GHz S DB". The words behind it count as well.
    private static TouchstoneOptions? AfterResistance(string[] words, TouchstoneOptions options, int number, FaultList faults)
    {
        int r = Array.FindIndex(words, w => w is "R" or "r");
        string[] rest = r < 0 ? [] : [.. words[(r + 1)..].SkipWhile(w => w[0] is '+' or '-' or '.' or '(' || char.IsAsciiDigit(w[0]))];
        if (rest.Length == 0)
        {
            return options;
        }

        string again = string.Join(' ', words[..r].Concat(rest));
        return Parse(Encoding.UTF8.GetBytes(again), number, faults);
    }
}
