using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Campaigns;

/// <summary>
/// A small comma-separated table with a header, as people keep it: sweeps.csv, limits.csv. Lines that start with '#' are remarks.
/// </summary>
internal sealed record CsvTable(ImmutableArray<string> Header, ImmutableArray<CsvRow> Rows, string Sha256)
{
    /// <summary>Line of the header, from 1.</summary>
    public int HeaderLine { get; init; } = 1;

    /// <summary>
    /// Reads a table; null, with the reason among the faults, where the file cannot be read. A file of remarks alone has an empty
    /// header.
    /// </summary>
    public static CsvTable? Read(string path, FaultList faults)
    {
        if (FileBytes.Read(path, faults, "fill it in, or remove it") is not { } bytes)
        {
            return null;
        }

        using var text = new TraceText(faults.File, bytes);
        return new CsvTableReader(faults).Read(text);
    }
}
