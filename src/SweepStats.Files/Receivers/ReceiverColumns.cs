using SweepStats.Files.Campaigns;

namespace SweepStats.Files.Receivers;

/// <summary>Where a file of observations has its columns.</summary>
internal sealed class ReceiverColumns
{
    public const string Name = "name", Frequency = "frequency_hz", Level = "level_dbm", LevelUncertainty = "level_u_db",
        Sensitivity = "sensitivity_dbm", SensitivityUncertainty = "sensitivity_u_db", Uncovered = "uncovered_heard",
        Covered = "covered_heard",
        Receiver = "receiver", Source = "source", Field = "field_dbuv_per_m", AntennaFactor = "antenna_factor_db_per_m",
        Power = "power_dbm", Gain = "gain_dbi", Distance = "distance_m";

    private static readonly ImmutableArray<string> Known =
        [Name, Frequency, Level, LevelUncertainty, Sensitivity, SensitivityUncertainty, Uncovered, Covered, Receiver, Source,
            Field, AntennaFactor, Power, Gain, Distance];

    private static readonly ImmutableArray<string> Needed =
        [Name, Frequency, LevelUncertainty, Sensitivity, SensitivityUncertainty, Uncovered, Covered];

    private readonly Dictionary<string, int> _places = [];

    /// <summary>Looks for the columns in a header; each that is unknown, or that no observation does without, is a
    /// fault.</summary>
    public ReceiverColumns(CsvTable table, FaultList faults)
    {
        for (int i = 0; i < table.Header.Length; i++)
        {
            Take(table.Header[i].Trim().ToLowerInvariant(), i, table.HeaderLine, faults);
        }

        foreach (string needed in Needed.Where(n => !_places.ContainsKey(n)))
        {
            faults.Add(table.HeaderLine, $"the column '{needed}' is missing",
                $"the header names the columns; {string.Join(", ", Needed)} are needed");
        }
    }

    /// <summary>A cell without surrounding blanks; empty where the column or the cell is missing.</summary>
    public string Cell(ImmutableArray<string> fields, string name) =>
        _places.TryGetValue(name, out int at) && at < fields.Length ? fields[at].Trim() : "";

    private void Take(string name, int place, int line, FaultList faults)
    {
        if (!Known.Contains(name))
        {
            faults.Add(line, name.Length == 0 ? FormattableString.Invariant($"column {place + 1} has no name")
                : $"'{name}' is not a column{Spelling.Hint(name, Known)}", $"use {string.Join(", ", Known)}");
        }
        else if (!_places.TryAdd(name, place))
        {
            faults.Add(line, $"the column '{name}' is there twice", "keep one of them");
        }
    }
}
