using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Touchstone;

/// <summary>
/// Puts the numbers of a Touchstone file together to points: a frequency, then a pair for each parameter, wrapped over lines as
/// the writer liked.
/// </summary>
internal sealed class TouchstonePoints : IDisposable
{
    private readonly TouchstoneFormat _format;
    private readonly int _exponent;
    private readonly int _numbers;
    private readonly TouchstoneLevels?[] _levels;
    private readonly FaultList _faults;
    private readonly PooledList<double> _hertz;

    private int _at;
    private int _startLine;
    private int? _splitLine;
    private double _first;

    /// <param name="header">The header of the file.</param>
    /// <param name="levels">For each pair of a point who takes it; null where nobody wants it.</param>
    /// <param name="capacity">Points expected.</param>
    /// <param name="faults">Takes what is wrong.</param>
    public TouchstonePoints(TouchstoneHeader header, TouchstoneLevels?[] levels, int capacity, FaultList faults)
    {
        (_levels, _faults) = (levels, faults);
        (_format, _exponent, _numbers) =
            (header.Options.Format, header.Options.FrequencyUnit.Exponent(), 1 + (2 * levels.Length));
        _hertz = new PooledList<double>(capacity);
    }

    /// <summary>Whether the next number is a frequency.</summary>
    public bool AtStart => _at == 0;

    /// <summary>Frequencies so far in Hz.</summary>
    public ReadOnlySpan<double> Hertz => _hertz.Items;

    /// <summary>Whether a line begins with a frequency that does not rise.</summary>
    public bool Falls(ReadOnlySpan<byte> bare)
    {
        var reader = new FieldReader(bare, TouchstoneLine.Blanks);
        return _hertz.Count > 0 && reader.Next(out ReadOnlySpan<byte> field)
            && StrictNumber.TryParse(field, TouchstoneLine.Blanks.DecimalMark, _exponent, out double hertz)
            && hertz <= _hertz[_hertz.Count - 1];
    }

    /// <summary>Takes a line of numbers; false at a fault.</summary>
    public bool Take(ReadOnlySpan<byte> bare, int index)
    {
        if (_splitLine is { } split)
        {
            return Refuse(split, "the row ends between the two numbers of a pair",
                "check that the extension tells the number of ports");
        }

        var reader = new FieldReader(bare, TouchstoneLine.Blanks);
        for (int fields = 0; reader.Next(out ReadOnlySpan<byte> field); fields++)
        {
            if (AtStart && fields > 0)
            {
                return Refuse(index + 1,
                    FormattableString.Invariant($"the row holds more than the {_numbers} numbers of a point"),
                    "check that the extension tells the number of ports");
            }

            if (!TryNumber(field, out double value))
            {
                return Refuse(index + 1, $"'{TouchstoneLine.Shown(field)}' is not a finite number", Remedy(field));
            }

            if (!Take(value, index + 1))
            {
                return false;
            }
        }

        // Pairs are never parted in a sound file, but they seem to be where the extension promises other ports than the file has.
        _splitLine = _at > 0 && _at % 2 == 0 ? index + 1 : null;
        return true;
    }

    /// <summary>Says that the last point is incomplete where it is.</summary>
    public void Finish()
    {
        if (!_faults.Any && !AtStart)
        {
            Refuse(_startLine, FormattableString.Invariant($"the last point lacks {_numbers - _at} of {_numbers} numbers"),
                "export the file again if it was cut off; else check the number of ports in its extension");
        }
        else if (!_faults.Any && _hertz.Count == 0)
        {
            Refuse(null, "there are no data rows", "export the file again");
        }
    }

    /// <summary>Gives the frequencies' working memory back; levels belong to who takes them.</summary>
    public void Dispose() => _hertz.Dispose();

    private bool TryNumber(ReadOnlySpan<byte> field, out double value)
    {
        if (StrictNumber.TryParse(field, TouchstoneLine.Blanks.DecimalMark, AtStart ? _exponent : 0, out value))
        {
            return true;
        }

        // A magnitude of 0 in dB, as programs print it that take the logarithm themselves.
        bool zero = _at % 2 == 1 && _format == TouchstoneFormat.DecibelAngle && field.Length is 4 or 9
            && System.Text.Encoding.ASCII.GetString(field).ToLowerInvariant() is "-inf" or "-infinity";
        value = zero ? double.NegativeInfinity : 0;
        return zero;
    }

    private bool Take(double value, int line)
    {
        if (AtStart)
        {
            _startLine = line;
            return Start(value);
        }

        if (_at % 2 == 1)
        {
            _first = value;
        }
        else
        {
            _levels[(_at / 2) - 1]?.Add(_first, value, _startLine);
        }

        _at = _at + 1 == _numbers ? 0 : _at + 1;
        return true;
    }

    private bool Start(double hertz)
    {
        if (hertz < 0 || (_hertz.Count > 0 && hertz <= _hertz[_hertz.Count - 1]))
        {
            string problem = hertz < 0
                ? FormattableString.Invariant($"{hertz:R} Hz is not a frequency")
                : FormattableString.Invariant($"the frequency {hertz:R} Hz does not rise above {_hertz[_hertz.Count - 1]:R} Hz");
            return Refuse(_startLine, problem,
                "frequencies must rise from row to row; check that the extension tells the number of ports");
        }

        _hertz.Add(hertz);
        _at = 1;
        return true;
    }

    private bool Refuse(int? line, string problem, string remedy)
    {
        _faults.Add(line, problem, remedy);
        return false;
    }

    private static string Remedy(ReadOnlySpan<byte> field)
    {
        return HasOtherExponent(field) ? "write the exponent with E, as in 1.5E-06; the standard has no D"
            : field.Contains((byte)',') ? "export the file again: its numbers must have decimal points, not commas"
            : "correct the row or export the file again";
    }

    // Fortran programs write 1.5D-06 for a number of double precision.
    private static bool HasOtherExponent(ReadOnlySpan<byte> field)
    {
        int mark = field.IndexOfAny((byte)'d', (byte)'D');
        return mark > 0 && StrictNumber.TryParse(field[..mark], TouchstoneLine.Blanks.DecimalMark, 0, out _)
            && StrictNumber.TryParse(field[(mark + 1)..], TouchstoneLine.Blanks.DecimalMark, 0, out _);
    }
}
