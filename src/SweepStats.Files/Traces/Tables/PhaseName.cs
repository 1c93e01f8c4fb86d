using System.Text.RegularExpressions;

namespace SweepStats.Files.Traces.Tables;

/// <summary>The name of a column, as far as it tells of a phase and of the trace that the column belongs to.</summary>
internal sealed partial class PhaseName
{
    private static readonly string[] Radians = ["rad", "radian", "radians"];
    private static readonly string[] Phases = ["phase", "ph", "phasen", "fase", "phasenwinkel"];

    // What a column is of its trace: the rest of its name tells which trace it is of.
    private static readonly HashSet<string> Measures =
    [
        .. ColumnWords.Degree, .. Radians, .. ColumnWords.Phase, "wrapped", "unwrapped",
        .. ColumnWords.Real, .. ColumnWords.Imaginary, .. ColumnWords.Magnitude, .. ColumnWords.Linear,
        "level", "pegel", "amplitude", "ampl", "amp", "log", "logmag", "power", "voltage", "db",
        "niveau", "nivel", "livello", "amplitud", "ampiezza", "gain",
    ];

    /// <summary>Takes a name apart; one that is too long for a name tells nothing of a trace.</summary>
    public PhaseName(ColumnName name)
    {
        string text = name.Text.Length <= ColumnName.Longest ? UnitInDecibels().Replace(name.Text, " ") : "";
        ImmutableArray<string> words = [.. Word().Matches(text).Select(m => m.Value.ToLowerInvariant())];
        Trace = string.Concat(words.Where((w, i) =>
            !Measures.Contains(w) && !IsUnitOfLevel(w, name) && !LeadsToUnit(words, i) && !(w is "u" && name.IsMagnitude)));
        IsParameter = name.Parameter is { } parameter && string.Equals(Trace, parameter, StringComparison.OrdinalIgnoreCase);
        bool isPhase = name.Kind == ColumnKind.Other && !name.IsLimit
            && (words.Any(Phases.Contains) || name.Parameter is not null);
        (bool degrees, bool radians) = (words.Any(ColumnWords.Degree.Contains), words.Any(Radians.Contains));
        DegreesPerUnit = !isPhase || degrees == radians ? null : degrees ? 1 : Phase.DegreesPerRadian;
    }

    /// <summary>
    /// What tells the trace, in lower case and without blanks: "s21", "trace1"; empty where the name tells none.
    /// </summary>
    public string Trace { get; }

    /// <summary>Whether <see cref="Trace"/> is an S-parameter and nothing else.</summary>
    public bool IsParameter { get; }

    /// <summary>Degrees in a unit of the column; null where it is no phase, or its unit is not stated.</summary>
    public double? DegreesPerUnit { get; }

    // "arg(S21) in Grad"; alone it may be the input.
    private static bool LeadsToUnit(ImmutableArray<string> words, int at) => words[at] is "in" or "en"
        && at + 1 < words.Length && (ColumnWords.Degree.Contains(words[at + 1]) || Radians.Contains(words[at + 1]));

    // V alone may be a trace, such as a polarisation.
    private static bool IsUnitOfLevel(string word, ColumnName name) =>
        word.Length > 1 && name.LevelUnit is not null && LevelUnits.Parse(word) == name.LevelUnit;

    // dBm, dBµV/m, dB(1 µV/m); not dB(S21).
    [GeneratedRegex(
        @"(?<!\p{L})dB\s?[\(\[]?\s?1?\s?(?:[uµμm]V|mW|m)(?:/m)?[\)\]]?(?!\p{L})",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex UnitInDecibels();

    [GeneratedRegex(@"[\p{L}]+|\d+|°", RegexOptions.CultureInvariant)]
    private static partial Regex Word();
}
