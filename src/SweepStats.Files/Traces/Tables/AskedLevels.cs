using System.Globalization;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Finds the columns of levels that a person names: by header, by S-parameter or by number.</summary>
internal sealed class AskedLevels(NamedTable table, PriorKnowledge known, StatedColumns stated)
{
    private readonly LevelColumns _columns = new(table, known);

    /// <summary>The columns; null, with the reason among the faults, where one cannot be the one that is meant.</summary>
    public ImmutableArray<LevelColumn>? Find()
    {
        var found = ImmutableArray.CreateBuilder<LevelColumn>();
        foreach (string wanted in known.Options.Columns)
        {
            if (Level(wanted) is not { } level)
            {
                return null;
            }

            found.Add(level);
        }

        return found.ToImmutable();
    }

    private LevelColumn? Level(string wanted)
    {
        int[] matches = Matches(wanted);
        if (NumberAndName(matches, wanted) is { } both)
        {
            known.Faults.Add(null, both, "give the columns other names in the header");
            return null;
        }

        if (Pair(matches, wanted) is { } pair)
        {
            return _columns.Pair(pair) with { Asked = true };
        }

        if (!IsOne(matches, wanted) || !MayBeLevel(matches[0]))
        {
            return null;
        }

        LevelColumn level = _columns.Of(matches[0], asked: true);
        return known.Options.PhaseColumn is null ? _columns.WithPhase(level) : stated.WithPhase(level, table.Frequency);
    }

    private int[] Matches(string wanted)
    {
        int[] matches = [.. Enumerable.Range(0, table.Names.Length).Where(i => Answers(table.Names[i], wanted))];
        return matches.Length == 0 && Number(wanted) is { } number ? [number - 1] : matches;
    }

    // By its header, or by the S-parameter that the header states.
    private static bool Answers(ColumnName name, string wanted) =>
        name.Text.Length > 0 && (string.Equals(name.Text, wanted, StringComparison.OrdinalIgnoreCase)
            || (name.Kind == ColumnKind.Level && string.Equals(name.Parameter, wanted, StringComparison.OrdinalIgnoreCase)));

    private int? Number(string wanted) =>
        int.TryParse(wanted, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= 1
            && number <= table.Names.Length ? number : null;

    // Headers "1,2,3" behind the frequency: "2" is the number of one column and the name of the next.
    private string? NumberAndName(int[] matches, string wanted) =>
        matches.Length != 1 || Number(wanted) is not { } number || number - 1 == matches[0]
            || number - 1 == table.Frequency ? null
            : $"'{wanted}' is the name of column {ColumnList.Number(matches[0])} and the number of column "
                + table.List([number - 1]);

    private LevelColumn? Pair(int[] matches, string wanted) => matches.Length is 0 or 2
        ? ComplexPairs.Find(table.Names, [])
            .FirstOrDefault(p => string.Equals(p.Name, wanted, StringComparison.OrdinalIgnoreCase)) : null;

    private bool IsOne(int[] matches, string wanted)
    {
        if (matches.Length == 1 && matches[0] != table.Frequency)
        {
            return true;
        }

        string problem = matches.Length == 0 ? "there is no column" : matches.Length > 1 ? "more than one column is named"
            : "the frequency column is not a level:";
        known.Faults.Add(null, $"{problem} '{wanted}' in {table.Sight.File}; it has {table.ListAll}",
            $"correct {known.Options.ColumnsStatedIn}: a header as listed here, or a number from 1");
        return false;
    }

    private bool MayBeLevel(int column)
    {
        if (NotALevel.Because(table.Names, column) is not { } what)
        {
            return true;
        }

        known.Faults.Add(null, $"column {table.List([column])} is {what}, not a level",
            "name a column of levels, or export the level trace");
        return false;
    }
}
