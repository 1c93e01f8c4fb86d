using System.Text;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>All levels of a trace in one row.</summary>
/// <param name="Label">The name before them; null where there is none.</param>
/// <param name="Levels">The levels.</param>
internal sealed record LevelRow(string? Label, double[] Levels)
{
    /// <summary>Levels that a row has at least.</summary>
    public const int FewestLevels = 5;

    /// <summary>Whether the name may be that of levels: a limit, a correction or a phase may stand in a row too.</summary>
    public bool IsLevel => Label is null
        || ColumnName.Of(Label) is { Kind: not ColumnKind.Other, IsCorrection: false, Part: ComplexPart.None, Statistic: null };

    /// <summary>The row that a line is; null where it is none.</summary>
    public static LevelRow? Of(TraceText text, int line, Separator separator)
    {
        ReadOnlySpan<byte> bytes = text.Line(line);
        if (bytes.Count(separator.Mark) < FewestLevels - 1 || !IsRow(bytes, separator))
        {
            return null;
        }

        List<string> fields = FieldReader.Texts(bytes, separator);
        string? label = fields.Count > 0 && Number(fields[0], separator) is null ? fields[0] : null;
        double?[] numbers = [.. fields.Skip(label is null ? 0 : 1).Select(f => Number(f, separator))];
        return numbers.Length >= FewestLevels && !numbers.Contains(null) && !Rises(numbers)
            ? new LevelRow(label, [.. numbers.Select(n => n!.Value)]) : null;
    }

    /// <summary>The number in a field; null where it holds none.</summary>
    public static double? Number(string field, Separator separator) =>
        StrictNumber.TryParse(Encoding.UTF8.GetBytes(field), separator.DecimalMark, 0, out double value) ? value : null;

    // Before the fields are kept: most lines hold no numbers, or too few.
    private static bool IsRow(ReadOnlySpan<byte> line, Separator separator)
    {
        var reader = new FieldReader(line, separator);
        int numbers = 0;
        for (int i = 0; reader.Next(out ReadOnlySpan<byte> field); i++)
        {
            bool number = StrictNumber.TryParse(field, separator.DecimalMark, 0, out _);
            numbers += number ? 1 : 0;
            if (!number && i > 0 && !field.IsEmpty)
            {
                return false;
            }
        }

        return numbers >= FewestLevels && !NumericRows.IsBlankOrComment(line);
    }

    // Frequencies may stand in a row too.
    private static bool Rises(double?[] numbers) => numbers.Zip(numbers.Skip(1)).All(pair => !(pair.Second <= pair.First));
}
