using System.Text.RegularExpressions;

namespace SweepStats.Files.Traces.Tables;

/// <summary>The name of a column, understood: what it holds and in which unit.</summary>
internal sealed partial class ColumnName
{
    private static readonly string[] FrequencyWords = ["f", "freq", "frequency", "frequencies", "frequenz", "stimulus"];
    private static readonly string[] LevelWords =
        ["level", "pegel", "amplitude", "ampl", "amp", "magnitude", "mag", "power", "trace", "trc", "logmag", "voltage", "signal", "value", "y"];
    private static readonly string[] OtherWords =
    [
        "no", "nr", "index", "idx", "point", "pt", "n", "phase", "ph", "deg", "degree", "degrees", "angle", "ang", "rad", "imag", "im", "imaginary", "real", "re", "time", "date",
        "uncertainty", "u", "std", "stdev", "sd", "sigma", "limit", "margin", "delay", "vswr", "swr", "factor", "rbw", "vbw",
    ];

    public ColumnName(string text)
    {
        Text = text.Trim();
        Match bracket = Bracketed().Match(Text);
        string tail = bracket.Success ? bracket.Groups[1].Value.Trim() : LastWord().Match(Text).Value;
        FrequencyUnit = FrequencyUnits.Parse(tail);
        LevelUnit = LevelUnits.Parse(tail);
        string[] words = [.. Word().Matches(bracket.Success ? Text[..bracket.Index] : Text).Select(m => m.Value.ToLowerInvariant())];
        StrangeUnit = bracket.Success && FrequencyUnit is null && LevelUnit is null && UnitLike().IsMatch(tail) ? tail : null;
        Kind = KindOf(words, tail);
    }

    public string Text { get; }

    public ColumnKind Kind { get; }

    public FrequencyUnit? FrequencyUnit { get; }

    public LevelUnit? LevelUnit { get; }

    /// <summary>A unit that the name states and that is none of frequency or level.</summary>
    public string? StrangeUnit { get; }

    /// <summary>Whether the name is a unit and nothing else, as in a row of units below the names.</summary>
    public bool IsBareUnit => FrequencyUnits.Parse(Text) is not null || LevelUnits.Parse(Text) is not null;

    private ColumnKind KindOf(string[] words, string tail)
    {
        if (words.Length > 0 && FrequencyWords.Contains(words[0]))
        {
            return ColumnKind.Frequency;
        }

        if (words.Any(OtherWords.Contains) || Text is "#" || tail is "°" || OtherWords.Contains(tail.ToLowerInvariant()))
        {
            return ColumnKind.Other;
        }

        if (FrequencyUnit is not null)
        {
            return ColumnKind.Frequency;
        }

        bool named = words.Any(w => LevelWords.Contains(w.TrimEnd('0', '1', '2', '3', '4', '5', '6', '7', '8', '9')) || ScatteringParameter().IsMatch(w));
        return LevelUnit is not null || named ? ColumnKind.Level : ColumnKind.Unknown;
    }

    [GeneratedRegex(@"[\(\[]\s*([^\)\]]*)[\)\]]\s*$")]
    private static partial Regex Bracketed();

    [GeneratedRegex(@"[\p{L}µμ°]+$")]
    private static partial Regex LastWord();

    [GeneratedRegex(@"[\p{L}][\p{L}\d]*")]
    private static partial Regex Word();

    [GeneratedRegex(@"db|/|°|%|hz", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex UnitLike();

    [GeneratedRegex(@"^s\d\d$")]
    private static partial Regex ScatteringParameter();
}
