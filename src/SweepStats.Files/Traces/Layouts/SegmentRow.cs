using System.Text;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>Reads one row as a segment: when it was taken, its range, and a level for every step.</summary>
internal sealed class SegmentRow(SegmentRowHeader header, FrequencyUnit unit)
{
    private const int LongestShown = 40;

    private readonly List<double> _levels = new(64);
    private double _start = double.NaN, _stop = double.NaN, _step = double.NaN;
    private string _when = "";

    /// <summary>The segment; null, with the reason among the faults, where the row is none.</summary>
    /// <param name="line">The row.</param>
    /// <param name="number">Its line from 1.</param>
    /// <param name="faults">Takes what is wrong with it.</param>
    public Segment? Read(ReadOnlySpan<byte> line, int number, FaultList faults)
    {
        var reader = new FieldReader(line, header.Separator);
        for (int i = 0; reader.Next(out ReadOnlySpan<byte> field); i++)
        {
            if (!Take(field, i) && !(field.IsEmpty && reader.AtEnd))
            {
                faults.Add(number, $"'{Shown(field)}' is not a finite number", "correct the row or export the sweep again");
                return null;
            }
        }

        _step = header.Step is null && _levels.Count > 1 ? (_stop - _start) / (_levels.Count - 1) : _step;
        if (Fits)
        {
            return new Segment(SweepDate.Parse(_when)?.At, _when, new(_start, _stop, _step), [.. _levels], number);
        }

        string needed = header.Line < 0 ? "date, time, start, stop, step, a count, and a level for every step"
            : "what its header names, and a level for every step";
        faults.Add(number,
            FormattableString.Invariant($"a segment from {_start:R} to {_stop:R} Hz in steps of {_step:R} Hz does not fit its ")
                + FormattableString.Invariant($"{_levels.Count} levels"), "each row needs " + needed);
        return null;
    }

    private bool Fits => _start >= 0 && _step > 0 && _stop > _start && _levels.Count > 0
        && !(Math.Abs(((_stop - _start) / _step) - _levels.Count) > 1.5);

    private static string Shown(ReadOnlySpan<byte> field) =>
        Encoding.UTF8.GetString(field[..Math.Min(field.Length, LongestShown)]);

    private bool Take(ReadOnlySpan<byte> field, int place)
    {
        if (header.When.Contains(place))
        {
            _when = (_when + " " + Shown(field)).Trim();
            return true;
        }

        // A count, or a setting of the segment.
        bool isLevel = place >= header.FirstLevel;
        if (!isLevel && place != header.Start && place != header.Stop && place != header.Step)
        {
            return true;
        }

        bool isNumber =
            StrictNumber.TryParse(field, header.Separator.DecimalMark, isLevel ? 0 : unit.Exponent(), out double value);
        if (isNumber)
        {
            Put(value, place);
        }

        return isNumber;
    }

    private void Put(double value, int place)
    {
        _start = place == header.Start ? value : _start;
        _stop = place == header.Stop ? value : _stop;
        _step = place == header.Step ? value : _step;
        if (place >= header.FirstLevel)
        {
            _levels.Add(value);
        }
    }
}
