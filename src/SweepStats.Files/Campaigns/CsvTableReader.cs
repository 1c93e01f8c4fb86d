using System.Text;
using CsvHelper;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Campaigns;

/// <summary>Reads the lines of a <see cref="CsvTable"/>.</summary>
internal sealed class CsvTableReader(FaultList faults)
{
    private readonly ImmutableArray<CsvRow>.Builder _rows = ImmutableArray.CreateBuilder<CsvRow>();
    private ImmutableArray<string> _header = [];
    private int _headerLine = 1;
    private char _separator = ',';

    /// <summary>The table of a text.</summary>
    public CsvTable Read(TraceText text)
    {
        for (int i = 0; i < text.LineCount; i++)
        {
            string line = text.LineText(i);
            if (!line.AsSpan().Trim().IsEmpty && !line.TrimStart().StartsWith('#'))
            {
                Take(line, i + 1);
            }
        }

        return new CsvTable(_header, _rows.ToImmutable(), text.Sha256) { HeaderLine = _headerLine };
    }

    private void Take(string line, int number)
    {
        // Spreadsheets of many countries write semicolons.
        _separator = _header.IsEmpty && !line.Contains(',') && line.Contains(';') ? ';' : _separator;
        if (Fields(line, number) is not { } fields)
        {
            return;
        }

        if (_header.IsEmpty)
        {
            (_header, _headerLine) = (fields, number);
        }
        else if (fields.Length > _header.Length && fields.AsSpan()[_header.Length..].ContainsAnyExcept(""))
        {
            faults.Add(number, FormattableString.Invariant($"the row has {fields.Length} fields and the header {_header.Length}"),
                _separator == ';' ? "put text with semicolons into double quotes" : "put text with commas into double quotes");
        }
        else if (fields.AsSpan().ContainsAnyExcept(""))
        {
            _rows.Add(new(number, fields));
        }
    }

    // Line by line, so that an unclosed quote spoils one row and not the rest of the file.
    private ImmutableArray<string>? Fields(string line, int number)
    {
        var options = new CsvReaderOptions
        {
            Separator = _separator,
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
