using System.Collections.Immutable;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Touchstone;

/// <summary>The numbers of a Touchstone file, point by point: frequency, then a pair for each parameter, wrapped over lines as the writer liked.</summary>
internal sealed class TouchstoneNumbers : IDisposable
{
    private static readonly Separator Blanks = new((byte)' ', (byte)'.');

    private readonly TouchstoneFormat _format;
    private readonly FrequencyUnit _unit;
    private readonly FaultList _faults;
    private readonly int _ports;
    private readonly int _stride;
    private readonly PooledList<double> _values;
    private readonly PooledList<double> _hertz;
    private readonly PooledList<int> _lines;

    public TouchstoneNumbers(TraceText text, int ports, TouchstoneOptions options, FaultList faults)
    {
        (_format, _unit, _faults, _ports) = (options.Format, options.FrequencyUnit, faults, ports);
        _stride = 2 * ports * ports;
        FirstLine = text.LineCount;
        (_values, _hertz, _lines) = (new(text.LineCount * 8), new(text.LineCount), new(text.LineCount));
        for (int i = 0; i < text.LineCount && Take(WithoutComment(text.Line(i)), i); i++)
        {
        }

        if (!faults.Any && _values.Count != _hertz.Count * _stride)
        {
            int missing = (_hertz.Count * _stride) - _values.Count;
            faults.Add(_lines[_lines.Count - 1] + 1, FormattableString.Invariant($"the last point lacks {missing} of {_stride + 1} numbers"), "export the file again; it was cut off");
        }
    }

    /// <summary>Index of the first line of data.</summary>
    public int FirstLine { get; private set; }

    /// <summary>The frequencies; null where there are faults or no points.</summary>
    public FrequencyAxis? Grid(GridMemory grids)
    {
        if (!_faults.Any && _hertz.Count == 0)
        {
            _faults.Add(null, "there are no data rows", "export the file again");
        }

        return _faults.Any ? null : grids.Of(_hertz.Items);
    }

    /// <summary>20·log10 of the magnitude of a parameter, row and column from 0.</summary>
    public double[] Decibels(string name, int row, int column)
    {
        // Two-port files alone list S11 S21 S12 S22, column by column; the specification has kept this since the first version.
        int place = 2 * (_ports == 2 ? (column * 2) + row : (row * _ports) + column);
        var levels = new double[_hertz.Count];
        for (int i = 0; i < levels.Length; i++)
        {
            levels[i] = Decibels(_values[(i * _stride) + place], _values[(i * _stride) + place + 1]);
            if (!double.IsFinite(levels[i]))
            {
                _faults.Add(_lines[i] + 1, $"the magnitude of {name} is not positive, which has no level in dB", "leave such points out, or name another parameter in sweeps.csv (column)");
                break;
            }
        }

        return levels;
    }

    public void Dispose()
    {
        _values.Dispose();
        _hertz.Dispose();
        _lines.Dispose();
    }

    private double Decibels(double first, double second) => _format switch
    {
        TouchstoneFormat.DecibelAngle => first,
        TouchstoneFormat.MagnitudeAngle => 20 * Math.Log10(first),
        _ => 20 * Math.Log10(double.Hypot(first, second)),
    };

    private static ReadOnlySpan<byte> WithoutComment(ReadOnlySpan<byte> line)
    {
        int comment = line.IndexOf((byte)'!');
        return comment < 0 ? line : line[..comment];
    }

    // False at the end of the data: a fault, or the noise block that may follow two-port data and starts at a lower frequency.
    private bool Take(ReadOnlySpan<byte> line, int index)
    {
        ReadOnlySpan<byte> bare = line.Trim(" \t"u8);
        if (bare.IsEmpty || bare[0] == (byte)'#')
        {
            return true;
        }

        if (IsPointStart && IsNoise(bare))
        {
            return false;
        }

        FirstLine = Math.Min(FirstLine, index);
        var reader = new FieldReader(bare, Blanks);
        bool first = true;
        while (reader.Next(out ReadOnlySpan<byte> field))
        {
            bool frequency = IsPointStart;
            if (frequency && !first)
            {
                _faults.Add(index + 1, FormattableString.Invariant($"the row holds more than the {_stride + 1} numbers of a point"), "check that the extension tells the number of ports");
                return false;
            }

            first = false;
            if (!StrictNumber.TryParse(field, (byte)'.', frequency ? _unit.Exponent() : 0, out double value))
            {
                _faults.Add(index + 1, $"'{System.Text.Encoding.UTF8.GetString(field[..Math.Min(field.Length, 40)])}' is not a finite number", field.Contains((byte)',') ? "correct the row: numbers have decimal points, not commas" : "correct the row or export the file again");
                return false;
            }

            if (!frequency)
            {
                _values.Add(value);
            }
            else if (!StartPoint(value, index))
            {
                return false;
            }
        }

        return true;
    }

    private bool IsPointStart => _values.Count == _hertz.Count * _stride;

    private bool StartPoint(double hertz, int index)
    {
        if (hertz < 0 || (_hertz.Count > 0 && hertz <= _hertz[_hertz.Count - 1]))
        {
            string problem = hertz < 0
                ? FormattableString.Invariant($"{hertz:R} Hz is not a frequency")
                : FormattableString.Invariant($"the frequency {hertz:R} Hz does not rise above {_hertz[_hertz.Count - 1]:R} Hz");
            _faults.Add(index + 1, problem, "frequencies must rise from row to row; check that the extension tells the number of ports");
            return false;
        }

        _hertz.Add(hertz);
        _lines.Add(index);
        return true;
    }

    private bool IsNoise(ReadOnlySpan<byte> line)
    {
        if (_ports != 2 || _hertz.Count == 0)
        {
            return false;
        }

        int fields = 0;
        double hertz = double.NaN;
        var reader = new FieldReader(line, Blanks);
        while (reader.Next(out ReadOnlySpan<byte> field))
        {
            fields++;
            if (fields == 1 && !StrictNumber.TryParse(field, (byte)'.', _unit.Exponent(), out hertz))
            {
                return false;
            }
        }

        return fields == 5 && hertz <= _hertz[_hertz.Count - 1];
    }
}
