using System.Globalization;
using System.Text;
using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Statistics;

namespace SweepStats.Files.Results;

/// <summary>
/// Writes rows of comma-separated text: UTF-8 without mark, line feeds, quotes where needed. Flushes, but leaves the stream open,
/// when disposed.
/// </summary>
internal sealed class CsvRows : IDisposable
{
    // The full-width forms are taken for the plain ones by spreadsheets of East Asia.
    private const string FormulaStarts = "=+-@＝＋－＠";

    // No number is longer.
    private const int MostOfNumber = 330;

    private readonly Stream _to;
    private byte[] _row = new byte[1 << 16];
    private int _length;
    private bool _started;

    /// <param name="to">Where to; stays open.</param>
    /// <param name="header">Columns of this program's own.</param>
    /// <param name="others">Further columns, with names from elsewhere.</param>
    public CsvRows(Stream to, string header, params IEnumerable<string> others)
    {
        _to = to;
        Cell(header);
        foreach (string other in others)
        {
            Text(other);
        }

        End();
    }

    /// <summary>A cell that this program formed: a number or a word of its own.</summary>
    public CsvRows Cell(string own)
    {
        Part();
        Put(own);
        return this;
    }

    /// <summary>The same, formed once for many rows.</summary>
    public CsvRows Cell(ReadOnlySpan<byte> own)
    {
        Part();
        own.CopyTo(Room(own.Length));
        _length += own.Length;
        return this;
    }

    /// <summary>A level in dB as <see cref="ResultNumber.Level"/> writes it.</summary>
    public CsvRows Level(double? value)
    {
        Part();
        if (value is { } level && double.IsFinite(level))
        {
            // A tiny negative level rounds to a zero that must not keep its sign.
            int written = FixedNumber.Write(level, 4, Room(MostOfNumber));
            bool signed = _row.AsSpan(_length, written).SequenceEqual("-0.0000"u8);
            written = signed ? FixedNumber.Write(0, 4, Room(MostOfNumber)) : written;
            _length += written;
        }

        return this;
    }

    /// <summary>A probability as <see cref="ResultNumber.Probability"/> writes it.</summary>
    /// <param name="value">The probability.</param>
    /// <param name="sign">What comes before it.</param>
    public CsvRows Probability(double? value, string sign = "")
    {
        Part();
        if (value is { } probability)
        {
            Put(sign);
            int written = FixedNumber.Write(probability, 6, Room(MostOfNumber));
            _length += written;
        }

        return this;
    }

    /// <summary>Degrees of freedom as <see cref="ResultNumber.DegreesOfFreedom"/> writes them.</summary>
    public CsvRows DegreesOfFreedom(double? value)
    {
        if (value is not { } finite || !double.IsFinite(finite))
        {
            return Cell(ResultNumber.DegreesOfFreedom(value));
        }

        Part();
        int written = FixedNumber.Write(finite, 1, Room(MostOfNumber));
        _length += written;
        return this;
    }

    /// <summary>A number to the last bit.</summary>
    public CsvRows Exact(double? value) => Cell(value is { } known ? ResultNumber.Exact(known) : "");

    /// <summary>A number of any size to nine significant digits.</summary>
    public CsvRows Significant(double? value) => Cell(ResultNumber.Significant(value));

    /// <summary>A count.</summary>
    public CsvRows Count(int? value) => Cell(ResultNumber.Count(value));

    /// <summary>Yes or no; empty where it is not known.</summary>
    public CsvRows YesNo(bool? value) => Cell(value switch { true => "yes", false => "no", null => "" });

    /// <summary>Cells without anything.</summary>
    public CsvRows Empty(int cells)
    {
        for (int i = 0; i < cells; i++)
        {
            Cell("");
        }

        return this;
    }

    /// <summary>Start and stop of a band.</summary>
    public CsvRows Band(FrequencyBand? band) => Exact(band?.Start.Value).Exact(band?.Stop.Value);

    /// <summary>Both ends of an interval in dB.</summary>
    public CsvRows Interval(Interval? interval) => Level(interval?.Low).Level(interval?.High);

    /// <summary>A figure in dB and its interval.</summary>
    public CsvRows Figure(BandFigure? figure) => Level(figure?.Value).Level(figure?.Low).Level(figure?.High);

    /// <summary>
    /// A cell of text from elsewhere. A spreadsheet takes a cell that starts with one of = + - @ for a formula, so such text gets
    /// an apostrophe before it.
    /// </summary>
    public CsvRows Text(string? text) => Cell(Quoted(text));

    /// <summary>Such a cell by itself, for many rows.</summary>
    public static byte[] TextCell(string? text) => Encoding.UTF8.GetBytes(Quoted(text));

    /// <summary>Ends the row.</summary>
    public void End()
    {
        Put((byte)'\n');
        _started = false;
    }

    public void Dispose()
    {
        _to.Write(_row, 0, _length);
        _length = 0;
        _to.Flush();
    }

    private static string Quoted(string? text)
    {
        string clean = Clean(text ?? "");
        bool quoted = clean.AsSpan().IndexOfAny(",\"") >= 0 || clean.Contains(';');
        return quoted ? $"\"{clean.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : clean;
    }

    private void Put(byte one)
    {
        Room(1)[0] = one;
        _length++;
    }

    private void Put(string text)
    {
        // Most cells of a row without findings or a requirement.
        if (text.Length == 0)
        {
            return;
        }

        int written = Encoding.UTF8.GetBytes(text, Room(Encoding.UTF8.GetMaxByteCount(text.Length)));
        _length += written;
    }

    // What is free after what was written, at least so many bytes; what was written may have gone, and its length with it.
    private Span<byte> Room(int bytes)
    {
        if (_row.Length - _length < bytes)
        {
            _to.Write(_row, 0, _length);
            _length = 0;
            _row = _row.Length < bytes ? new byte[bytes] : _row;
        }

        return _row.AsSpan(_length);
    }

    private static string Clean(string text)
    {
        string oneLine = string.Concat(text.Select(c => char.IsControl(c) || c is '\u2028' or '\u2029' ? ' ' : c)).Trim();
        return oneLine.FirstOrDefault(IsSeen) is var first && FormulaStarts.Contains(first) ? "'" + oneLine : oneLine;
    }

    // A mark that is not seen, such as that of the byte order, hides no formula from a spreadsheet.
    private static bool IsSeen(char c) => !char.IsWhiteSpace(c) && char.GetUnicodeCategory(c) != UnicodeCategory.Format;

    private void Part()
    {
        if (_started)
        {
            Put((byte)',');
        }

        _started = true;
    }
}
