namespace SweepStats.Files.Traces.Touchstone;

/// <summary>The option line of a Touchstone file. What it leaves out has the standard's default: GHz, S, MA.</summary>
/// <remarks>The reference resistance is passed over: it does not matter to a ratio of waves.</remarks>
internal sealed record TouchstoneOptions(FrequencyUnit FrequencyUnit, TouchstoneFormat Format)
{
    private const int LongestLine = 1000;

    /// <summary>
    /// What to do about an option line that is missing or strange: one copied from a message would change the levels.
    /// </summary>
    public const string Remedy =
        "export the file again. Or write the option line with the unit (Hz, kHz, MHz, GHz) and the format (DB, MA, RI) of "
            + "the export";

    /// <summary>Understands an option line; words in any order and case.</summary>
    /// <param name="bare">The line without its comment.</param>
    /// <param name="number">Its number in the file, from 1.</param>
    /// <param name="faults">Takes what is wrong with it.</param>
    public static TouchstoneOptions? Parse(ReadOnlySpan<byte> bare, int number, FaultList faults)
    {
        if (bare.Length > LongestLine)
        {
            faults.Add(number, FormattableString.Invariant($"the option line is longer than {LongestLine} characters"), Remedy);
            return null;
        }

        FrequencyUnit? unit = null;
        TouchstoneFormat? format = null;
        foreach (string word in WithoutResistance(TouchstoneLine.Words(bare[1..])))
        {
            string upper = word.ToUpperInvariant();
            FrequencyUnit? unitHere = FrequencyUnits.Parse(upper);
            TouchstoneFormat? formatHere = FormatOf(upper);
            bool isKnown = OpensResistance(upper) || upper == "S" || unitHere is not null || formatHere is not null;
            if (Problem(word, upper, isKnown) is { } problem)
            {
                faults.Add(number, problem.Problem, problem.Remedy);
                return null;
            }

            if ((unit ?? unitHere) != (unitHere ?? unit) || (format ?? formatHere) != (formatHere ?? format))
            {
                faults.Add(number, $"the option line holds '{word}' beside another unit or format", Remedy);
                return null;
            }

            (unit, format) = (unit ?? unitHere, format ?? formatHere);
        }

        return new TouchstoneOptions(unit ?? FrequencyUnit.Gigahertz, format ?? TouchstoneFormat.MagnitudeAngle);
    }

    // The words but for those of a resistance behind its R.
    private static IEnumerable<string> WithoutResistance(IEnumerable<string> words)
    {
        bool behind = false;
        foreach (string word in words)
        {
            string upper = word.ToUpperInvariant();
            if (behind && IsResistance(upper))
            {
                continue;
            }

            behind = OpensResistance(upper);
            yield return word;
        }
    }

    // "R", "R50", and "RI" too, which is a format.
    private static bool OpensResistance(string upper) =>
        upper[0] == 'R' && (upper.Length == 1 || IsResistance(upper[1..].TrimStart('=')));

    private static TouchstoneFormat? FormatOf(string upper) => upper switch
    {
        "DB" => TouchstoneFormat.DecibelAngle,
        "MA" => TouchstoneFormat.MagnitudeAngle,
        "RI" => TouchstoneFormat.RealImaginary,
        _ => null,
    };

    private static (string Problem, string Remedy)? Problem(string word, string upper, bool known) => upper switch
    {
        "Y" or "Z" or "G" or "H" => ($"the file holds {upper} parameters, which are no attenuation", "export S parameters"),
        "THZ" => ($"'{word}' is not a unit of frequency of Touchstone files", "export the file in Hz, kHz, MHz or GHz"),
        _ => known ? null : ($"the option line holds '{word}', which is none of its words", Remedy),
    };

    // Plain or complex, in one word or several: 50, 19.545, (50,1), 50+1j, 50 + j 1.
    private static bool IsResistance(string upper) =>
        upper is "+" or "-" or "J" or "I" or "OHM" or "OHMS" or "=" ||
        (upper.Length > 0 && upper.Any(char.IsAsciiDigit)
            && upper.All(c => char.IsAsciiDigit(c) || c is '.' or ',' or '(' or ')' or '+' or '-' or 'E' or 'I' or 'J' or '*'));
}
