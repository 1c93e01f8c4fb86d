using System.Collections.Immutable;
using System.Text;
using CsvHelper;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Campaigns;

/// <summary>
/// A small comma-separated table with a header, as people keep it: sweeps.csv, limits.csv. Lines that start with '#' are remarks.
/// </summary>
internal sealed record CsvTable(ImmutableArray<string> Header, ImmutableArray<CsvRow> Rows, string Sha256)
{
    /// <summary>Line of the header, from 1.</summary>
    public int HeaderLine { get; private init; } = 1;

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
        var header = ImmutableArray<string>.Empty;
        var rows = ImmutableArray.CreateBuilder<CsvRow>();
        char separator = ',';
        int headerLine = 1;
        for (int i = 0; i < text.LineCount; i++)
        {
            string line = text.LineText(i);
            if (line.AsSpan().Trim().IsEmpty || line.TrimStart().StartsWith('#'))
            {
                continue;
            }

            // Spreadsheets of many countries write semicolons.
            separator = header.IsEmpty && !line.Contains(',') && line.Contains(';') ? ';' : separator;
            if (Fields(line, separator, i + 1, faults) is not { } fields)
            {
                continue;
            }

            if (header.IsEmpty)
            {
                (header, headerLine) = (fields, i + 1);
            }
            else if (fields.Length > header.Length && fields.AsSpan()[header.Length..].ContainsAnyExcept(""))
            {
                faults.Add(i + 1,
                    FormattableString.Invariant($"the row has {fields.Length} fields and the header {header.Length}"),
                    separator == ';' ? "put text with semicolons into double quotes" : "put text with commas into double quotes");
            }
            else if (fields.AsSpan().ContainsAnyExcept(""))
            {
                rows.Add(new(i + 1, fields));
            }
        }

        return new CsvTable(header, rows.ToImmutable(), text.Sha256) { HeaderLine = headerLine };
    }

    // Line by line, so that an unclosed quote spoils one row and not the rest of the file.
    private static ImmutableArray<string>? Fields(string line, char separator, int number, FaultList faults)
    {
        var options = new CsvReaderOptions
        {
            Separator = separator,
            HasHeader = false,
            MalformedData = CsvMalformedDataHandling.Throw,
            AllowLineBreaksInQuotes = false,
        };
        try
        {
            using CsvReader reader = CsvReader.Create(Encoding.UTF8.GetBytes(line), options);
            return reader.Read() ? [.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)] : [];
        }
        catch (CsvFormatException)
        {
            faults.Add(number, "a quoted field is not closed or is followed by other text",
                "close the quotes; double those inside");
            return null;
        }
    }
}
