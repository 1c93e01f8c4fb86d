using System.Buffers;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Finds the names of the columns above the data.</summary>
/// <param name="text">The file.</param>
/// <param name="separator">What parts the fields of its rows.</param>
/// <param name="stated">Names of columns that a person states.</param>
/// <param name="faults">Takes what is wrong with the header.</param>
internal sealed class ColumnHeader(TraceText text, Separator separator, IEnumerable<string> stated, FaultList faults)
{
    private const int LongestName = 200;
    private const int LongestStatement = 400;

    private static readonly SearchValues<byte> Meaningless = SearchValues.Create("!#% \t,;"u8);

    // Units of columns that are neither frequency nor level.
    private static readonly HashSet<string> OtherUnits =
        ["-", "--", "1", "°", "deg", "degree", "degrees", "grad", "rad", "s", "ms", "%", "lin", "linear", "u", "dbi"];

    private static readonly Separator[] CommentSeparators =
        [new((byte)'\t', (byte)'.'), new((byte)';', (byte)'.'), new((byte)',', (byte)'.'), new((byte)' ', (byte)'.')];

    /// <summary>
    /// The names, one a column; null where no line above the data names columns. One of the names that a person states shows such
    /// a line too.
    /// </summary>
    /// <param name="firstLine">Index of the first line of the data.</param>
    /// <param name="columns">Number of its columns.</param>
    public ImmutableArray<ColumnName>? Find(int firstLine, int columns)
    {
        int? at = LineAbove(text, firstLine);
        ImmutableArray<ColumnName>? names = at is { } line ? Names(text.Line(line), columns) : null;
        while (at is { } between && !Holds(names, stated)
            && (IsRemark(text.Line(between), names) || IsSetting(text.Line(between), names)))
        {
            // A remark, or a setting such as "Unit,dBm", between header and data.
            at = LineAbove(text, between);
            names = at is { } upper ? Names(text.Line(upper), columns) : null;
        }

        if (at is { } nearest && names is null)
        {
            RefuseOtherWidth(text.Line(nearest), nearest, columns, separator, faults);
            return null;
        }

        if (names is { } units && units.All(n => n.Text.Length == 0 || IsUnit(n)) && units.Any(n => n.IsBareUnit))
        {
            return WithUnits(units, at!.Value);
        }

        return Tells(names) || Holds(names, stated) ? names : null;
    }

    // A line of units below the names.
    private ImmutableArray<ColumnName>? WithUnits(ImmutableArray<ColumnName> units, int at)
    {
        if ((LineAbove(text, at) is { } higher ? Names(text.Line(higher), units.Length) : null) is not { } above)
        {
            return units;
        }

        if (above.Zip(units).FirstOrDefault(p => Differ(p.First, p.Second)) is ({ } named, { } other))
        {
            faults.Add(
                at + 1, $"the header gives column {named.Text} and the line of units below it '{other.BareText}'",
                "export the sweep again, or remove the wrong one of the two units");
            return null;
        }

        return [.. above.Zip(units, (name, unit) => unit.Text.Length == 0 ? name : IsUnit(name) ? name
            : ColumnName.Of($"{name.Text} ({unit.BareText})"))];
    }

    private static bool Holds(ImmutableArray<ColumnName>? names, IEnumerable<string> stated) =>
        names is { } found && stated.Any(s => found.Any(n => n.IsCalled(s)));

    private static bool IsUnit(ColumnName name) => name.IsBareUnit || OtherUnits.Contains(name.BareText.ToLowerInvariant());

    private static bool Differ(ColumnName name, ColumnName unit) =>
        (name.LevelUnit is { } level && unit.IsBareUnit && unit.LevelUnit != level)
            || (name.FrequencyUnit is { } frequency && unit.IsBareUnit && unit.FrequencyUnit != frequency);

    private static bool Tells(ImmutableArray<ColumnName>? names) =>
        names is { } found && found.Any(n => n.Kind is ColumnKind.Frequency or ColumnKind.Level);

    // A comment that heads columns names the frequency among them, and no figure of it.
    private static bool IsRemark(ReadOnlySpan<byte> line, ImmutableArray<ColumnName>? names) =>
        IsComment(line) ? !(names is { } found && (found.Any(n => n.Kind == ColumnKind.Frequency) || HeadsLevels(found)))
            || RemarkLine.NamesAFrequency(line)
            : !Tells(names) && RemarkLine.Is(line);

    // "# level/dBm" over a list of levels.
    private static bool HeadsLevels(ImmutableArray<ColumnName> names) =>
        names is [{ LevelUnit: not null, Kind: ColumnKind.Level, IsCorrection: false, EndsInSize: false } only]
        && (only.IsBareUnit
            || ColumnWords.Level.Contains(only.Text.Split([' ', '/', '(', '[', ',', '_'], 2)[0].ToLowerInvariant()));

    private static bool IsComment(ReadOnlySpan<byte> line) =>
        line.TrimStart(" \t"u8) is [(byte)'!' or (byte)'#' or (byte)'%', ..];

    // "Attenuation,10 dB" over two columns is no header of theirs.
    private static bool IsSetting(ReadOnlySpan<byte> line, ImmutableArray<ColumnName>? names)
    {
        if (line.Length > LongestStatement)
        {
            return false;
        }

        bool headed = names is { } found && found.Any(n => n.Kind == ColumnKind.Frequency && !n.IsBareUnit)
            && !RemarkLine.NamesAFrequency(line);
        bool described = line.IndexOfAny((byte)':', (byte)'=') > 0;
        return StatementReader.Read(System.Text.Encoding.UTF8.GetString(line))
            .Any(s => States(s, headed)
                || ((described ? AxisStatements.Name(s) : AxisStatements.Unit(s)) is { FrequencyUnit: not null }
                    or { LevelUnit: not null }));
    }

    // "Points,Trace 1" names columns: what is a number in a setting is none here. "Stop Frequency,31 MHz" and "Freq Unit,MHz"
    // name none.
    private static bool States(Statement statement, bool headed) =>
        SettingKeys.Find(statement.Key) is { } key && key.Setting switch
        {
            Setting.FrequencyUnit or Setting.LevelUnit =>
                !headed || StatedUnits.Frequency(statement.Values) is not null || StatedUnits.Level(statement.Values) is not null,
            Setting.Date or Setting.Time or Setting.Created =>
                statement.Values.Any(v => v.AsSpan().IndexOfAnyInRange('0', '9') >= 0),
            Setting.Range => StatedRange.Ends(string.Join(" - ", statement.Values)) is not null,
            _ => RangeKeys.IsNumeric(key.Setting) ? StatedNumber.Parse(statement.Values[0]) is not null : !headed,
        };

    private static int? LineAbove(TraceText text, int line)
    {
        for (int i = line - 1; i >= 0; i--)
        {
            if (text.Line(i).IndexOfAnyExcept(Meaningless) >= 0)
            {
                return i;
            }
        }

        return null;
    }

    private ImmutableArray<ColumnName>? Names(ReadOnlySpan<byte> line, int columns)
    {
        if (line.Length > LongestName * (columns + 2))
        {
            return null;
        }

        ReadOnlySpan<byte> bare = line.TrimStart(" \t"u8);
        bool comment = bare[0] is (byte)'!' or (byte)'#' or (byte)'%';
        ReadOnlySpan<byte> content = comment ? bare.TrimStart("!#% "u8) : line;
        foreach (Separator candidate in (ReadOnlySpan<Separator>)[separator, .. CommentSeparators])
        {
            List<string> fields = Fields(content, columns, candidate);
            // "# f in GHz" between blanks is a remark of three words.
            if (fields.Count != columns || (candidate.Mark == (byte)' ' && fields.Exists(f => f is "in" or "en")))
            {
                continue;
            }

            // A header may be parted by other marks than the rows where it tells its columns.
            ImmutableArray<ColumnName> names = [.. fields.Select(f => ColumnName.Of(f.TrimEnd(':', ' ')))];
            bool mayHead = comment || separator.Mark == (byte)' ' || candidate == separator || HeadsAll(names);
            if (mayHead && !HoldsNumbers(names, fields))
            {
                return names;
            }
        }

        return null;
    }

    private static List<string> Fields(ReadOnlySpan<byte> content, int columns, Separator candidate)
    {
        if (candidate.Mark == (byte)' ')
        {
            return BlankNames.Of(content, columns);
        }

        List<string> fields = FieldReader.Texts(content, candidate);
        while (fields.Count < columns && content.Count(candidate.Mark) >= columns - 1)
        {
            fields.Add("");
        }

        return fields;
    }

    // Traces may be called 1, 2, 3, but then a word names the frequency.
    private static bool HoldsNumbers(ImmutableArray<ColumnName> names, List<string> fields) =>
        !names.Any(n => n.Kind == ColumnKind.Frequency && !n.IsBareUnit)
        && fields.Exists(f => StrictNumber.TryParse(System.Text.Encoding.UTF8.GetBytes(f), (byte)'.', 0, out _));

    private static bool HeadsAll(ImmutableArray<ColumnName> names) =>
        names.Any(n => n.Kind == ColumnKind.Frequency) && names.All(n => n.Kind != ColumnKind.Unknown && n.Text.Length > 0);

    // Two names over four columns is what decimal commas between commas look like.
    private static void RefuseOtherWidth(ReadOnlySpan<byte> line, int index, int columns, Separator separator, FaultList faults)
    {
        if (line.Length > LongestName * (columns + 2))
        {
            return;
        }

        List<string> fields = FieldReader.Texts(line, separator);
        if (fields.Count > 1 && fields.Count != columns
            && fields.Any(
                f => ColumnName.Of(f) is { Kind: ColumnKind.Frequency, FrequencyUnit: not null } or { LevelUnit: not null }))
        {
            faults.Add(
                index + 1,
                FormattableString.Invariant($"the header names {fields.Count} columns and the rows have {columns}"),
                fields.Count * 2 == columns ? "export with decimal points, or with semicolons or tabs between the columns"
                    : "write one name for each column into the header, none that stands over no column");
        }
    }
}
