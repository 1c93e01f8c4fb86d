namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// Settings in two lines: their names, and below each its value: <c>RBW [kHz],VBW [kHz],Detector</c> over <c>100,300,RMS</c>.
/// </summary>
internal static class SettingRows
{
    private const int FewestNames = 2;

    /// <summary>
    /// What two lines state together; none where the first is no line of names, or the second holds no number below one.
    /// </summary>
    public static List<Statement> Read(string names, string values)
    {
        // Asked of every line: values nearly always hold a figure.
        if (names.AsSpan().IndexOfAnyInRange('0', '9') >= 0 || names.AsSpan().IndexOfAny(',', ';', '\t') <= 0
            || names.AsSpan().IndexOfAny(':', '=') >= 0)
        {
            return [];
        }

        List<string> above = LinePieces.Of(names);
        List<string> below = LinePieces.Of(values);
        return above.Count >= FewestNames && below.Count == above.Count && above.TrueForAll(IsName)
            && below.Exists(p => p.Length > 0 && (char.IsAsciiDigit(p[0]) || p[0] == '-'))
            && !below.Exists(IsName)
            ? [.. above.Zip(below, (name, value) => StatementReader.Read($"{name}: {value}")).SelectMany(s => s)]
            : [];
    }

    private static bool IsName(string piece) => piece.Length > 0 && char.IsLetter(piece[0])
        && StatementReader.Read(piece + ": 1") is [var only]
        && SettingKeys.Find(only.Key) is { Setting: not (Setting.LevelUnit or Setting.FrequencyUnit) };
}
