using System.Collections.Concurrent;
using System.Text.RegularExpressions;

namespace SweepStats.Files.Traces.Tables;

/// <summary>The name of a column, understood: what it holds and in which unit.</summary>
internal sealed partial class ColumnName
{
    /// <summary>Characters beyond which a text is no name.</summary>
    public const int Longest = 200;

    private static readonly char[] Digits = ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9'];

    private static readonly string[] LimitWords =
        ["lim", "threshold", "tolerance", "toleranz", "seuil", "mask", "margin", "marge"];
    private static readonly string[] OtherWords =
    [
        .. ColumnWords.Phase, .. ColumnWords.Degree, .. ColumnWords.Real, .. ColumnWords.Imaginary,
        "no", "nr", "index", "idx", "point", "points", "pt", "n", "rad", "time", "date", "punkt", "puntos", "punto",
        "uncertainty", "unc", "u", "error", "deviation", "stddev", "std", "stdev", "sd", "sigma", "incertitude", "fehler",
        "abweichung", "confidence", "delay", "vswr", "swr", "rbw", "vbw", "text", "incertezza", "incertidumbre", "unsicherheit",
        "messunsicherheit", "streuung", "scarto", "desviación", "desviacion", "écart", "ecart", "variance", "varianz", "spread",
        "segment", "segments", "segmento", "abschnitt", "teilbereich", "subrange",
    ];

    // Beside a unit of level they tell which level it is: "Level point 1 (dBm)", "Level no 2 angle 30 [dBm]".
    private static readonly string[] Numbering =
        [.. ColumnWords.Degree, "no", "nr", "index", "idx", "point", "pt", "n", "angle", "ang", "winkel", "time", "date",
            "rbw", "vbw"];

    // Files of a campaign have the same names, and each is asked for several times.
    private const int MostKept = 1000;

    private static readonly ConcurrentDictionary<string, ColumnName> Kept = new(StringComparer.Ordinal);

    /// <summary>What a name tells; the first thousand short ones are kept.</summary>
    /// <param name="text">The name.</param>
    public static ColumnName Of(string text)
    {
        if (Kept.TryGetValue(text, out ColumnName? known))
        {
            return known;
        }

        var name = new ColumnName(text);
        if (text.Length <= Longest && Kept.Count < MostKept)
        {
            Kept.TryAdd(text, name);
        }

        return name;
    }

    private ColumnName(string text)
    {
        Text = text.Trim();
        if (Text.Length > Longest)
        {
            // No name; and brackets by the thousand take the patterns below the square of the length.
            return;
        }

        Match bracket = Bracketed().Match(Text);
        Match decibels = BracketedReference().Match(Text);
        bracket = decibels.Success ? decibels : bracket;
        string tail = bracket.Success ? bracket.Groups[1].Value.Trim() : LastWord().Match(Text).Value.TrimEnd('.');
        FrequencyUnit = FrequencyUnits.Parse(tail);
        LevelUnit = SpelledDecibels.In(Text) is { } spelled ? SpelledDecibels.Parse(Text[spelled..])
            : LevelUnits.Parse(tail) ?? UnitWithin(Text);
        string[] words =
            [.. Word().Matches(bracket.Success ? Text[..bracket.Index] : Text).Select(m => m.Value.ToLowerInvariant())];
        IsLimit = words.Any(IsLimitWord);
        StrangeUnit = bracket.Success && FrequencyUnit is null && LevelUnit is null && UnitLike().IsMatch(tail) ? tail : null;
        IsLogMagnitude = LogMagnitude().IsMatch(Text);
        string[] said = [.. words, .. tail.ToLowerInvariant().Split([' ', '-', '_', '.', '|'])];
        IsMagnitude = !IsLogMagnitude && (said.Any(ColumnWords.Magnitude.Contains)
            || (Text.Contains('|', StringComparison.Ordinal) && BetweenBars().IsMatch(Text)));
        IsLinear = !IsLogMagnitude && said.Any(ColumnWords.Linear.Contains);
        IsNamedLevel = words.Any(ColumnWords.Level.Contains) || ScatteringParameter().IsMatch(Text);
        IsGain = words.Any(ColumnWords.Gain.Contains);
        bool corrects = words.Any(ColumnWords.Correction.Contains);
        IsAttenuation =
            !corrects && words.Any(w => ColumnWords.Attenuation.Contains(w) || w.EndsWith("dämpfung", StringComparison.Ordinal));
        IsCorrection = LevelUnit == Traces.LevelUnit.DecibelsPerMeter || IsGain || IsAttenuation || corrects;
        Statistic = words.Append(tail.ToLowerInvariant()).Select(w => StatisticOf(w.TrimEnd(Digits)))
            .FirstOrDefault(w => w is not null);
        Part = ComplexPartOf([.. InDecibels ? words.Where(w => !IsPart(w)) : words, tail.ToLowerInvariant()]);
        Kind = OtherQuantities.Name(words, tail, bracket.Success) || OtherQuantities.IsNoMagnitude(Text) ? ColumnKind.Other
            : KindOf(words, tail);
        Parameter = ScatteringParameter().Match(Text) is { Success: true } s ? "S" + s.Groups[1].Value + s.Groups[2].Value : null;
    }

    /// <summary>What the name tells where it is one of a phase.</summary>
    public PhaseName AsPhase => field ??= new PhaseName(this);

    /// <summary>The name as the file has it, blanks at the ends taken off.</summary>
    public string Text { get; }

    /// <summary>What the column holds, as far as its name tells.</summary>
    public ColumnKind Kind { get; private init; }

    /// <summary>The unit of frequency that the name states; null for none.</summary>
    public FrequencyUnit? FrequencyUnit { get; }

    /// <summary>The unit of level that the name states; null for none.</summary>
    public LevelUnit? LevelUnit { get; }

    /// <summary>A unit that the name states and that is none of frequency or level.</summary>
    public string? StrangeUnit { get; }

    /// <summary>The S-parameter that the name states, such as "S21"; null for none.</summary>
    public string? Parameter { get; }

    /// <summary>Whether it is a loss, a gain, a factor or a shielding: a difference of levels, no level.</summary>
    public bool IsCorrection { get; }

    /// <summary>Whether it is the logarithm of a magnitude, which is kept in dB.</summary>
    public bool IsLogMagnitude { get; }

    /// <summary>Whether it is a magnitude, which may be linear.</summary>
    public bool IsMagnitude { get; }

    /// <summary>Whether the name says that the magnitude is no logarithm.</summary>
    public bool IsLinear { get; }

    /// <summary>Whether a word of it, and not its unit alone, tells a level.</summary>
    public bool IsNamedLevel { get; }

    /// <summary>Whether it is a gain: a correction, or a transmission that was measured.</summary>
    public bool IsGain { get; }

    /// <summary>Whether it is an attenuation, which rises where the level falls.</summary>
    public bool IsAttenuation { get; }

    /// <summary>Whether it is a limit, or the distance to one.</summary>
    public bool IsLimit { get; }

    /// <summary>
    /// The detector, or what of several sweeps the column keeps, as far as the name tells; null where it does not say so.
    /// </summary>
    public string? Statistic { get; }

    /// <summary>Which part of a complex number it is.</summary>
    public ComplexPart Part { get; }

    /// <summary>The name without what tells the part of a complex number, quotes and brackets.</summary>
    public string Base =>
        BaseNoise().Replace(Text, " ").Replace("\"", "", StringComparison.Ordinal).Trim(' ', '.', ':', '_', '-', '|');

    /// <summary>Whether it is the header that a person names.</summary>
    public bool IsCalled(string name) => Text.Length > 0 && string.Equals(Text, name, StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether the name is a unit and nothing else, as in a row of units below the names.</summary>
    public bool IsBareUnit => FrequencyUnits.Parse(BareText) is not null || LevelUnits.Parse(BareText) is not null;

    /// <summary>
    /// Whether the name ends in a number and its unit, as in "Antenna gain 3 dB": that is a size, and no unit of a column.
    /// </summary>
    public bool EndsInSize => Text.AsSpan().LastIndexOfAnyInRange('0', '9') is >= 0 and var last
        && (FrequencyUnits.Parse(Text[(last + 1)..]) is not null || LevelUnits.Parse(Text[(last + 1)..]) is not null);

    /// <summary>The name without brackets around all of it.</summary>
    public string BareText => Text.Length > 2 && Text[0] is '(' or '[' && Text[^1] is ')' or ']' ? Text[1..^1].Trim() : Text;

    /// <summary>A name that the file gives to a trace, so that it is a level whatever it is called.</summary>
    public static ColumnName OfTrace(string text) => new(text) { Kind = ColumnKind.Level };

    private ColumnKind KindOf(string[] words, string tail)
    {
        if (words.Length > 0 && ColumnWords.Frequency.Contains(words[0]))
        {
            return ColumnKind.Frequency;
        }

        if (IsLogMagnitude)
        {
            return ColumnKind.Level;
        }

        bool levelStated = LevelUnits.Parse(tail) is not null;
        if (IsLimit || words.Any(
            w => (OtherWords.Contains(w) && !(levelStated && Numbering.Contains(w)) && !(w is "u" && IsVoltage)
                && !(InDecibels && IsPart(w))) || w.EndsWith("unsicherheit", StringComparison.Ordinal)) || Text is "#"
            || tail is "°" || IsOther(tail.ToLowerInvariant().TrimEnd('.')))
        {
            return ColumnKind.Other;
        }

        if (FrequencyUnit is not null || (LevelUnit is null && words.Any(IsFrequencyWord) && !words.Any(IsLevelWord)))
        {
            return ColumnKind.Frequency;
        }

        bool named = IsMagnitude || words.Any(w => IsLevelWord(w.TrimEnd(Digits)) || ParameterWord().IsMatch(w));
        return LevelUnit is not null || IsCorrection || (named && !EmptyBracket().IsMatch(Text)) ? ColumnKind.Level
            : ColumnKind.Unknown;
    }

    // U of "U/mV" is a voltage, and in "S21 lin mag [U]" it is no unit.
    private bool IsVoltage =>
        Text[0] == 'U' && LevelUnit is Traces.LevelUnit.Volts or Traces.LevelUnit.Millivolts or Traces.LevelUnit.Microvolts;

    // No part of a complex number is in dB: "Level im Raum (dBm)" is German.
    private bool InDecibels => LevelUnit is { } unit && !unit.IsLinear();

    private static bool IsPart(string word) => ColumnWords.Real.Contains(word) || ColumnWords.Imaginary.Contains(word);

    private bool IsOther(string tail) => OtherWords.Contains(tail) && !(tail is "u" && IsMagnitude);

    private static bool IsFrequencyWord(string word) =>
        ColumnWords.FrequencyInFull.Contains(word) || word.EndsWith("frequenz", StringComparison.Ordinal);

    private static bool IsLevelWord(string word) =>
        ColumnWords.Level.Contains(word) || word.EndsWith("pegel", StringComparison.Ordinal);

    private static bool IsLimitWord(string word) =>
        word.StartsWith("limit", StringComparison.Ordinal) || word.StartsWith("limline", StringComparison.Ordinal)
            || word.StartsWith("grenz", StringComparison.Ordinal)
        || LimitWords.Contains(word.TrimEnd(Digits));

    // "Level [dBm] RMS", and "dB(S21)": what stands behind the unit, or in its brackets, is no reference.
    private static LevelUnit? UnitWithin(string text) =>
        DecibelsOfParameter().IsMatch(text) ? Traces.LevelUnit.Decibels
        : UnitInside().Match(text) is { Success: true } inside ? LevelUnits.Parse(inside.Groups[1].Value)
        : null;

    private static string? StatisticOf(string word) => word switch
    {
        "peak" or "pk" => "peak",
        "qp" or "quasi" or "quasipeak" => "quasi-peak",
        "rms" => "rms",
        "max" or "maximum" or "maxhold" or "maxh" or "highest" => "highest",
        "min" or "minimum" or "minhold" or "minh" or "lowest" => "lowest",
        "avg" or "av" or "average" or "mean" or "caverage" or "cav" or "mittelwert" or "moyenne" => "mean",
        "median" => "median",
        _ => null,
    };

    private static ComplexPart ComplexPartOf(string[] words) =>
        words.Any(ColumnWords.Imaginary.Contains) ? ComplexPart.Imaginary
        : words.Any(ColumnWords.Real.Contains) ? ComplexPart.Real
        : words.Any(w => ColumnWords.Phase.Contains(w) || ColumnWords.Degree.Contains(w)) ? ComplexPart.Phase
        : ComplexPart.None;

    [GeneratedRegex(@"[\(\[]\s*([^\)\]]*)[\)\]]\s*$")]
    private static partial Regex Bracketed();

    // dB(µV) is a level in dB; µV in brackets behind anything else is a voltage.
    [GeneratedRegex(@"[\(\[]?\b(dB\s*[\(\[][^\)\]]*[\)\]](?:/m)?)[\)\]]?\s*$",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex BracketedReference();

    [GeneratedRegex(@"[\(\[]\s*([\p{L}µμ/]+)\s*[\)\]]\s*\S", RegexOptions.CultureInvariant)]
    private static partial Regex UnitInside();

    [GeneratedRegex(@"\bdB\s*[\(\[]\s*S\d\d\s*[\)\]]\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex DecibelsOfParameter();

    [GeneratedRegex(@"[\(\[]\s*[\)\]]\s*$")]
    private static partial Regex EmptyBracket();

    [GeneratedRegex(@"[\p{L}µμ°]+(?:(?:/|(?<=V)_)m)?\.?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex LastWord();

    // "S21Re" is two words.
    [GeneratedRegex(@"[Ss]\d\d(?=(?:real|re|imag|im)(?![\p{L}\d]))|[\p{L}][\p{L}\d]*",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Word();

    [GeneratedRegex(@"db|/|°|%|hz", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex UnitLike();

    [GeneratedRegex(@"\|\s*[\p{L}\d\s_]{1,20}\|", RegexOptions.CultureInvariant)]
    private static partial Regex BetweenBars();

    [GeneratedRegex(@"^s\d\d$")]
    private static partial Regex ParameterWord();

    [GeneratedRegex(@"(?<![\p{L}\d])[Ss]\(?(\d)\s*,?\s*(\d)\)?(?!\d)", RegexOptions.CultureInvariant)]
    private static partial Regex ScatteringParameter();

    [GeneratedRegex(@"\blog\s*[\(\[]?\s*\|?mag|\blog\s*\(\s*mg", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex LogMagnitude();

    // An underscore parts words as a blank does, and so do the digits of an S-parameter: s21_re, S21Re.
    [GeneratedRegex(
        @"[\(\[][^\)\]]*[\)\]]|(?:(?<![\p{L}\d])|(?<=(?<![\p{L}\d])s\d\d))(?:real(?:teil|e)?|re|réelle?|imag(?:inary|inaire|"
            + @"inaria|inärteil)?|im|immaginaria|parte?|partie|mag|magnitude|phase|ph|angle|ang|deg|db|lin)(?![\p{L}\d])\.?",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex BaseNoise();
}
