using SweepStats.Quantities;

namespace SweepStats.Files.Traces;

/// <summary>Names of level units, and the way from each to the scales of the core.</summary>
public static class LevelUnits
{
    /// <summary>The words for units of level that a person may state, as a list in a sentence.</summary>
    public const string Words = "dBm, dBµV, dBmV, dB, dBµV/m, V, mV, µV, W, mW or linear";

    private const int LongestWord = 24;

    /// <summary>How the unit is written.</summary>
    public static string Symbol(this LevelUnit unit) => unit switch
    {
        LevelUnit.DecibelMilliwatts => "dBm",
        LevelUnit.DecibelMicrovolts => "dBµV",
        LevelUnit.DecibelMillivolts => "dBmV",
        LevelUnit.Decibels => "dB",
        LevelUnit.DecibelMicrovoltsPerMeter => "dBµV/m",
        LevelUnit.DecibelsPerMeter => "dB/m",
        LevelUnit.Volts => "V",
        LevelUnit.Millivolts => "mV",
        LevelUnit.Microvolts => "µV",
        LevelUnit.Watts => "W",
        LevelUnit.Milliwatts => "mW",
        _ => "linear magnitude",
    };

    /// <summary>
    /// The unit that a word names; null for any other word. Case counts only between mW and MW, which is no level unit here.
    /// </summary>
    /// <remarks>The reference may stand in brackets, as IEC 60027-3 writes it: dB(µV), dB(1 µV/m), dB(mW).</remarks>
    public static LevelUnit? Parse(string word) => SpelledDecibels.Begins(word) ? SpelledDecibels.Parse(word) : Plain(word) switch
    {
        "W" => LevelUnit.Watts,
        "mW" or "mw" => LevelUnit.Milliwatts,
        "MW" or "MV" => null,
        var other => other.ToLowerInvariant() switch
        {
            "dbm" or "dbmw" => LevelUnit.DecibelMilliwatts,
            "dbµv" or "dbuv" => LevelUnit.DecibelMicrovolts,
            "dbmv" => LevelUnit.DecibelMillivolts,
            "dbµv/m" or "dbuv/m" or "dbuv_m" or "dbµv_m" or "dbuvpermeter" or "dbµvpermeter" =>
                LevelUnit.DecibelMicrovoltsPerMeter,
            "db/m" => LevelUnit.DecibelsPerMeter,
            "db" => LevelUnit.Decibels,
            "v" or "volt" or "volts" => LevelUnit.Volts,
            "mv" => LevelUnit.Millivolts,
            "µv" or "uv" => LevelUnit.Microvolts,
            "w" or "watt" or "watts" => LevelUnit.Watts,
            "linear" or "linear magnitude" => LevelUnit.LinearMagnitude,
            _ => null,
        },
    };

    /// <summary>The word by which a person states the linear magnitude of a ratio.</summary>
    public const string LinearWord = "linear";

    /// <summary>
    /// The unit that a person states of a file's levels; null for any other word, and for the unit of a correction.
    /// </summary>
    /// <param name="word">The word.</param>
    public static LevelUnit? Stated(string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        return Parse(word) is { } unit and not LevelUnit.DecibelsPerMeter ? unit : null;
    }

    private static string Plain(string word)
    {
        string bare = word.Trim().Replace('μ', 'µ');
        if (!bare.StartsWith("db", StringComparison.OrdinalIgnoreCase) || bare.Length > LongestWord)
        {
            return bare;
        }

        string reference = bare[2..].Replace(" ", "", StringComparison.Ordinal);
        bool bracketed = reference.Length > 2 && reference[0] is '(' or '[' && reference[^1] is ')' or ']';
        return string.Concat("dB", bracketed ? reference[1..^1].TrimStart('1') : reference);
    }

    /// <summary>The scale that levels of a unit are brought to.</summary>
    public static LevelScale Scale(this LevelUnit unit) => unit switch
    {
        LevelUnit.Decibels or LevelUnit.LinearMagnitude => LevelScale.DecibelRatio,
        LevelUnit.DecibelMicrovoltsPerMeter => LevelScale.DecibelMicrovoltsPerMeter,
        _ => LevelScale.DecibelMilliwatts,
    };

    /// <summary>Whether the unit is proportional to voltage or power, so that only positive values have a level in dB.</summary>
    internal static bool IsLinear(this LevelUnit unit) => unit >= LevelUnit.Volts;

    /// <summary>Whether the way to dBm needs the impedance.</summary>
    internal static bool IsVoltage(this LevelUnit unit) =>
        unit is LevelUnit.DecibelMicrovolts or LevelUnit.DecibelMillivolts or LevelUnit.Volts or LevelUnit.Millivolts
            or LevelUnit.Microvolts;

    /// <summary>A level in dB on the unit's scale. A voltage U is the power U²/R: 0 dBµV in 50 Ω are −107 dBm.</summary>
    internal static double ToDecibels(this LevelUnit unit, double level, double impedanceOhm)
    {
        double perOhm = 10 * Math.Log10(impedanceOhm);
        return unit switch
        {
            LevelUnit.DecibelMicrovolts => level - 90 - perOhm,
            LevelUnit.DecibelMillivolts => level - 30 - perOhm,
            LevelUnit.Volts => (20 * Math.Log10(level)) + 30 - perOhm,
            LevelUnit.Millivolts => (20 * Math.Log10(level)) - 30 - perOhm,
            LevelUnit.Microvolts => (20 * Math.Log10(level)) - 90 - perOhm,
            LevelUnit.Watts => (10 * Math.Log10(level)) + 30,
            LevelUnit.Milliwatts => 10 * Math.Log10(level),
            LevelUnit.LinearMagnitude => 20 * Math.Log10(level),
            _ => level,
        };
    }
}
