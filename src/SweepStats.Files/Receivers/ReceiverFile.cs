using SweepStats.Files.Campaigns;
using SweepStats.Receivers;

namespace SweepStats.Files.Receivers;

/// <summary>A file of observations with receivers: comma-separated, one row an observation. Immutable.</summary>
/// <param name="Observations">The observations; empty where there are faults.</param>
/// <param name="Faults">Why the file cannot be used, all of it; empty where it can.</param>
/// <param name="Input">The file and its hash; null where it cannot be opened.</param>
public sealed record ReceiverFile(ImmutableArray<ReceiverObservation> Observations, ImmutableArray<ReadFault> Faults,
    InputFile? Input)
{
    /// <summary>Reads a file. Nothing is guessed: what is missing or unclear is a fault with its line.</summary>
    /// <param name="path">Where it is.</param>
    public static ReceiverFile Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var faults = new FaultList(path);
        CsvTable? table = CsvTable.Read(path, faults);
        ImmutableArray<ReceiverObservation> read = table is null ? [] : Rows(table, faults);
        InputFile? input = table is null ? null : new InputFile(Path.GetFileName(path), table.Sha256);
        return new ReceiverFile(faults.Any ? [] : read, faults.All, input);
    }

    private static ImmutableArray<ReceiverObservation> Rows(CsvTable table, FaultList faults)
    {
        var columns = new ReceiverColumns(table, faults);
        if (faults.Any)
        {
            return [];
        }

        if (table.Rows.Length is 0 or > ReceiverTest.MostObservations)
        {
            faults.Add(null, table.Rows.IsEmpty ? "there are no observations"
                : FormattableString.Invariant($"there are {table.Rows.Length} observations"),
                FormattableString.Invariant($"write 1 to {ReceiverTest.MostObservations} rows, one an observation"));
            return [];
        }

        var seen = new Dictionary<ReceiverObservation, int>();
        foreach ((int line, ImmutableArray<string> fields) in table.Rows)
        {
            if (new ReceiverRow(columns, new CsvRow(line, fields), faults).Read() is { } observation
                && !seen.TryAdd(observation, line))
            {
                faults.Add(line, FormattableString.Invariant($"the row repeats line {seen[observation]}"),
                    "remove it; a copy is no second observation");
            }
        }

        return [.. seen.Keys];
    }
}
