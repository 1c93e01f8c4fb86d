namespace SweepStats.Files.Traces.Preambles;

/// <summary>Settings in two lines: their names, and below each its value: <c>RBW [kHz],VBW [kHz],Detector</c> over <c>100,300,RMS</c>.</summary>
internal sealed class SettingRows
{
    private const int FewestNames = 2;

    private List<string>? _names;

    /// <summary>Takes a line; the statements that it makes with the line above, none where it makes none.</summary>
    /// <param name="line">The line.</param>
    /// <param name="isHeading">Whether it is a line of names, which states nothing by itself.</param>
    public List<Statement> Pass(string line, out bool isHeading)
    {
        isHeading = false;
        List<string>? names = _names;
        if (names is null && !MayBegin(line))
        {
            return [];
        }

        List<string> pieces = LinePieces.Of(line);
        isHeading = names is null && pieces.Count >= FewestNames && pieces.TrueForAll(IsName);
        _names = isHeading ? pieces : null;
        return names is not null && names.Count == pieces.Count && pieces.Exists(p => p.AsSpan().IndexOfAnyInRange('0', '9') >= 0)
            ? [.. names.Zip(pieces, (name, value) => StatementReader.Read($"{name}: {value}")).SelectMany(s => s)]
            : [];
    }

    // Asked of every line: values nearly always hold a figure.
    private static bool MayBegin(string line) =>
        line.AsSpan().IndexOfAnyInRange('0', '9') < 0 && line.AsSpan().IndexOfAny(',', ';', '\t') > 0 && line.AsSpan().IndexOfAny(':', '=') < 0;

    private static bool IsName(string piece) =>
        StatementReader.Read(piece + ": 1") is [var only] && SettingKeys.Find(only.Key) is { Setting: not (Setting.LevelUnit or Setting.FrequencyUnit) };
}
