using System.Text;

namespace SweepStats.Files.Traces.Text;

/// <summary>Walks over the fields of a line, blanks and enclosing quotes taken off.</summary>
internal ref struct FieldReader(ReadOnlySpan<byte> line, Separator separator)
{
    private readonly ReadOnlySpan<byte> _line = line;
    private readonly byte _mark = separator.Mark;
    private int _at;
    private bool _done;

    /// <summary>Whether nothing but empty fields follows.</summary>
    public readonly bool AtEnd => _done || _line[_at..].Trim((byte)' ').Trim(_mark).IsEmpty;

    /// <summary>Steps to the next field, which may be empty; false where the line has no more.</summary>
    public bool Next(out ReadOnlySpan<byte> field)
    {
        field = default;
        SkipBlanks();
        if (_done || (_at >= _line.Length && (_mark == (byte)' ' || _at == 0)))
        {
            return false;
        }

        if (_at < _line.Length && _line[_at] == (byte)'"')
        {
            field = Quoted();
            return true;
        }

        ReadOnlySpan<byte> rest = _line[_at..];
        int length = _mark == (byte)' ' ? rest.IndexOfAny((byte)' ', (byte)'\t') : rest.IndexOf(_mark);
        _done = length < 0;
        field = Trim(_done ? rest : rest[..length]);
        _at += _done ? rest.Length : length + 1;
        return true;
    }

    /// <summary>The fields of a line as text, empty ones at the end left out.</summary>
    public static List<string> Texts(ReadOnlySpan<byte> line, Separator separator)
    {
        List<string> texts = [];
        var reader = new FieldReader(line, separator);
        while (reader.Next(out ReadOnlySpan<byte> field))
        {
            texts.Add(Encoding.UTF8.GetString(field).Replace("\"\"", "\"", StringComparison.Ordinal));
        }

        while (texts.Count > 0 && texts[^1].Length == 0)
        {
            texts.RemoveAt(texts.Count - 1);
        }

        return texts;
    }

    // From the opening quote to the separator after the closing one; what follows the quote belongs to the field, as in
    // "A,1"(REAL).
    private ReadOnlySpan<byte> Quoted()
    {
        int end = _at + 1;
        bool inside = true;
        while (end < _line.Length && (inside || !IsMark(_line[end])))
        {
            inside ^= _line[end] == (byte)'"';
            end++;
        }

        ReadOnlySpan<byte> field = Trim(_line[_at..end]);
        _done = end >= _line.Length;
        _at = end + 1;
        return field.Length >= 2 && field[^1] == (byte)'"' && field[0] == (byte)'"' ? Trim(field[1..^1]) : field;
    }

    private readonly bool IsMark(byte c) => c == _mark || (_mark == (byte)' ' && c == (byte)'\t');

    private void SkipBlanks()
    {
        while (_at < _line.Length && (_line[_at] == (byte)' ' || (_line[_at] == (byte)'\t' && _mark is (byte)' ')))
        {
            _at++;
        }
    }

    private static ReadOnlySpan<byte> Trim(ReadOnlySpan<byte> field) =>
        field.IsEmpty || (field[0] > ' ' && field[^1] > ' ') ? field : field.Trim(" \t"u8);
}
