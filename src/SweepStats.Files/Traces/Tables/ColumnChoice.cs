using System.Collections.Immutable;
using System.Globalization;
using SweepStats.Files.Traces.Preambles;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Decides which columns are read, from their names, the rest of the file and what the campaign says; refuses where these leave a doubt.</summary>
internal sealed class ColumnChoice(string file, TraceReadOptions options, Preamble preamble, FaultList faults)
{
    private const string NameColumn = "name the column to read in sweeps.csv (column = its header or its number)";

    public ChosenColumns? Choose(ImmutableArray<ColumnName>? header, int columns)
    {
        ImmutableArray<ColumnName> names = header ?? [.. Enumerable.Repeat(new ColumnName(""), columns)];
        int? frequency = FrequencyColumn(names, header is not null);
        if (frequency is not { } f || UnitOfFrequency(names[f]) is not { } unit || Wanted(names, f) is not { } wanted)
        {
            return null;
        }

        var levels = ImmutableArray.CreateBuilder<LevelColumn>();
        foreach (int index in wanted)
        {
            string name = names[index].Text.Length > 0 ? names[index].Text : (index + 1).ToString(CultureInfo.InvariantCulture);
            if (UnitOfLevel(names[index], name) is not { } level)
            {
                return null;
            }

            bool twice = names.Count(n => n.Text == names[index].Text) > 1 && names[index].Text.Length > 0;
            levels.Add(new LevelColumn(index, twice ? FormattableString.Invariant($"{name} #{index + 1}") : name, level));
        }

        return new ChosenColumns(f, unit, levels.ToImmutable());
    }

    private int? FrequencyColumn(ImmutableArray<ColumnName> names, bool named)
    {
        int[] found = [.. Enumerable.Range(0, names.Length).Where(i => names[i].Kind == ColumnKind.Frequency)];
        if (found.Length == 1)
        {
            return found[0];
        }

        if (found.Length > 1)
        {
            faults.Add(null, $"more than one column looks like a frequency: {Listed(names, found)}", "keep one frequency column a file");
            return null;
        }

        if (named)
        {
            faults.Add(null, $"no column is named as the frequency among {Listed(names, Enumerable.Range(0, names.Length))}", "name it 'frequency_hz' or 'Frequency [MHz]'");
            return null;
        }

        faults.Assume("no column is named; the first was taken as the frequency");
        return 0;
    }

    private FrequencyUnit? UnitOfFrequency(ColumnName name)
    {
        FrequencyUnit? unit = name.FrequencyUnit ?? (name.StrangeUnit is null ? preamble.FrequencyUnit : null);
        if (unit is null && name.StrangeUnit is null && options.FrequencyUnit is { } stated)
        {
            faults.Assume($"frequencies are in {Symbol(stated)}, as campaign.toml says");
            unit = stated;
        }

        if (unit is null)
        {
            faults.Add(
                null,
                name.StrangeUnit is { } strange ? $"'{strange}' is not a unit of frequency that can be read" : "the file does not say the unit of frequency",
                "name the column 'frequency_hz' or the like, or set frequency_unit under [setup] in campaign.toml");
        }

        return unit;
    }

    private LevelUnit? UnitOfLevel(ColumnName name, string label)
    {
        LevelUnit? unit = name.LevelUnit ?? (name.StrangeUnit is null && name.FrequencyUnit is null ? preamble.LevelUnit : null);
        if (unit is null && name.StrangeUnit is null && name.FrequencyUnit is null && options.LevelUnit is { } stated)
        {
            faults.Assume($"levels of column {label} are in {stated.Symbol()}, as campaign.toml says");
            unit = stated;
        }

        if (unit is null)
        {
            faults.Add(
                null,
                name.StrangeUnit is { } strange ? $"column {label} is in '{strange}', which is not a unit of level that can be read" : $"the file does not say the unit of level of column {label}",
                "use dBm, dBµV, dBmV, dB, V, mV, µV, W or mW in the header, or set level_unit under [setup] in campaign.toml");
        }

        return unit;
    }

    private int[]? Wanted(ImmutableArray<ColumnName> names, int frequency)
    {
        if (!options.Columns.IsEmpty)
        {
            return Named(names, frequency);
        }

        int[] rest = [.. Enumerable.Range(0, names.Length).Where(i => i != frequency)];
        int[] levels = [.. rest.Where(i => names[i].Kind == ColumnKind.Level)];
        int[] unknown = [.. rest.Where(i => names[i].Kind == ColumnKind.Unknown)];
        if (rest.Length == 1 && unknown.Length == 1)
        {
            return rest;
        }

        if (unknown.Length > 0)
        {
            faults.Add(null, $"the names do not tell whether these columns are levels: {Listed(names, unknown)}", NameColumn);
            return null;
        }

        if (levels.Length == 0)
        {
            faults.Add(null, $"no column holds a level: {Listed(names, rest)}", NameColumn);
            return null;
        }

        if (levels.Length < rest.Length)
        {
            faults.Assume($"columns that are not levels were not read: {Listed(names, rest.Except(levels))}");
        }

        return levels;
    }

    private int[]? Named(ImmutableArray<ColumnName> names, int frequency)
    {
        List<int> indices = [];
        foreach (string wanted in options.Columns)
        {
            int[] matches = [.. Enumerable.Range(0, names.Length).Where(i => names[i].Text.Length > 0 && string.Equals(names[i].Text, wanted, StringComparison.OrdinalIgnoreCase))];
            if (matches.Length == 0 && int.TryParse(wanted, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= 1 && number <= names.Length)
            {
                matches = [number - 1];
            }

            if (matches.Length != 1 || matches[0] == frequency)
            {
                string problem = matches.Length == 0 ? "there is no column" : matches.Length > 1 ? "more than one column is named" : "the frequency column is not a level:";
                faults.Add(null, $"{problem} '{wanted}' in {file}; it has {Listed(names, Enumerable.Range(0, names.Length))}", "correct 'column' in sweeps.csv; a number from 1 is always clear");
                return null;
            }

            indices.Add(matches[0]);
        }

        return [.. indices];
    }

    private static string Listed(ImmutableArray<ColumnName> names, IEnumerable<int> indices) =>
        string.Join(", ", indices.Select(i => names[i].Text.Length > 0 ? $"{(i + 1).ToString(CultureInfo.InvariantCulture)} '{names[i].Text}'" : (i + 1).ToString(CultureInfo.InvariantCulture)));

    private static string Symbol(FrequencyUnit unit) => unit switch
    {
        FrequencyUnit.Hertz => "Hz",
        FrequencyUnit.Kilohertz => "kHz",
        FrequencyUnit.Megahertz => "MHz",
        _ => "GHz",
    };
}
