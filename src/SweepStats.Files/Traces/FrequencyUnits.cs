namespace SweepStats.Files.Traces;

/// <summary>Names of frequency units, and their size.</summary>
public static class FrequencyUnits
{
    /// <summary>The unit that a word names in any case; null for any other word.</summary>
    public static FrequencyUnit? Parse(string word) => word.Trim().ToLowerInvariant() switch
    {
        "hz" or "hertz" or "hertz (hz)" or "hercios" => FrequencyUnit.Hertz,
        "khz" or "x 10^3 hz" or "x10^3 hz" or "× 10^3 hz" or "×10^3 hz" or "10^3 hz" or "kilohertz" or "kilohertz (khz)"
            or "khertz" or "kilohercios" => FrequencyUnit.Kilohertz,
        "mhz" or "x 10^6 hz" or "x10^6 hz" or "× 10^6 hz" or "×10^6 hz" or "10^6 hz" or "megahertz" or "megahertz (mhz)"
            or "mhertz" or "mégahertz" or "megahercios" => FrequencyUnit.Megahertz,
        "ghz" or "x 10^9 hz" or "x10^9 hz" or "× 10^9 hz" or "×10^9 hz" or "10^9 hz" or "gigahertz" or "gigahertz (ghz)"
            or "ghertz" or "gigahercios" => FrequencyUnit.Gigahertz,
        _ => null,
    };

    /// <summary>Power of ten of the unit. Scaling is done on the decimal text, so that 0.3 GHz is exactly 300 MHz.</summary>
    internal static int Exponent(this FrequencyUnit unit) => 3 * (int)unit;

    /// <summary>How the unit is written.</summary>
    public static string Symbol(this FrequencyUnit unit) => unit switch
    {
        FrequencyUnit.Hertz => "Hz",
        FrequencyUnit.Kilohertz => "kHz",
        FrequencyUnit.Megahertz => "MHz",
        _ => "GHz",
    };
}
