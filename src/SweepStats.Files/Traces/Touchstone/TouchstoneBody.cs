using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Touchstone;

/// <summary>
/// Walks over the lines below the header: the points, the noise block that may follow them, and in version 2 the keywords about
/// them.
/// </summary>
/// <param name="text">The file.</param>
/// <param name="header">Its header.</param>
/// <param name="points">Takes the points.</param>
/// <param name="faults">Takes what is wrong.</param>
internal sealed class TouchstoneBody(TraceText text, TouchstoneHeader header, TouchstonePoints points, FaultList faults)
{
    private const int NumbersOfNoise = 5;

    private int _lastLine;
    private int _noiseRows;
    private bool _noise;
    private bool _ended;
    private bool _left;

    /// <summary>Reads to the end of the file.</summary>
    public void Read()
    {
        for (int i = header.FirstLine; i < text.LineCount && !faults.Any; i++)
        {
            ReadOnlySpan<byte> bare = TouchstoneLine.Bare(text.Line(i));
            if (!bare.IsEmpty)
            {
                Take(bare, i);
            }
        }

        points.Finish();
        if (!faults.Any)
        {
            CheckCounts();
        }
    }

    private void Take(ReadOnlySpan<byte> bare, int index)
    {
        if (_ended)
        {
            Leave(index);
        }
        else if (bare[0] == (byte)'#')
        {
            faults.Assume(TouchstoneHeaderReader.IgnoredOptionLine(index));
        }
        else if (bare[0] == (byte)'[')
        {
            Keyword(bare, index);
        }
        else if (_noise || BeginsNoise(bare))
        {
            _noise = true;
            Noise(bare, index);
        }
        else
        {
            _lastLine = index + 1;
            points.Take(bare, index);
        }
    }

    private void Leave(int index)
    {
        if (!_left)
        {
            faults.Assume(FormattableString.Invariant($"what stands from line {index + 1} on, below [End], was not read"));
            _left = true;
        }
    }

    private void Keyword(ReadOnlySpan<byte> bare, int index)
    {
        TouchstoneKeyword? keyword = TouchstoneKeyword.Parse(bare);
        if (!header.HasKeywords)
        {
            faults.Add(index + 1, $"'{TouchstoneLine.Shown(bare)}' is a keyword of version 2 in a file of version 1",
                "export the file again in version 2, or remove the line");
        }
        else if (keyword?.Name == "noisedata" && !_noise)
        {
            _noise = true;
        }
        else if (keyword?.Name == "end")
        {
            _ended = true;
        }
        else
        {
            faults.Add(index + 1, $"'{TouchstoneLine.Shown(bare)}' is not a keyword that may stand here",
                "only [Noise Data] and [End] follow the data; correct its spelling or remove the line");
        }
    }

    // In version 1 the noise parameters follow those of two ports without a word; that the frequency starts anew tells them.
    private bool BeginsNoise(ReadOnlySpan<byte> bare) =>
        !header.HasKeywords && header.Ports == 2 && points.AtStart && points.Falls(bare)
            && TouchstoneLine.Numbers(bare) == NumbersOfNoise;

    private void Noise(ReadOnlySpan<byte> bare, int index)
    {
        if (TouchstoneLine.Numbers(bare) != NumbersOfNoise)
        {
            faults.Add(index + 1,
                "the row is in the block of noise parameters and does not hold "
                    + FormattableString.Invariant($"{NumbersOfNoise} numbers"),
                "correct the row, or see whether the frequencies above it fall where they should rise");
        }

        _noiseRows++;
    }

    private void CheckCounts()
    {
        int read = points.Hertz.Length;
        if (header.Points > read)
        {
            faults.Add(_lastLine, FormattableString.Invariant($"the file announces {header.Points} points and ends after {read}"),
                "export the file again: it was cut off, or [Number of Frequencies] is wrong");
            return;
        }

        if (header.Points < read)
        {
            faults.Assume(
                FormattableString.Invariant($"the file announces {header.Points} points and has {read}; all were read"));
        }

        if (_noiseRows > 0)
        {
            faults.Assume(FormattableString.Invariant(
                $"the noise parameters below the data were not read: {_noiseRows} {(_noiseRows == 1 ? "row" : "rows")}"));
        }

        if (header.NoiseRows is { } announced && announced != _noiseRows)
        {
            faults.Assume(
                FormattableString.Invariant($"the file announces {announced} rows of noise parameters and has {_noiseRows}"));
        }

        if (header.HasKeywords && !_ended)
        {
            faults.Assume("the file does not close with [End]");
        }
    }
}
