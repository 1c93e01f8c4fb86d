using System.Globalization;

namespace SweepStats.Files.Traces.Touchstone;

/// <summary>The keywords that version 2 has above the data.</summary>
/// <param name="ports">Number of ports that the file's name tells.</param>
/// <param name="faults">Takes what is wrong.</param>
/// <remarks>Source: the Touchstone file format specification, version 2.0 (IBIS, from memory).</remarks>
internal sealed class TouchstoneKeywords(int ports, FaultList faults)
{
    private readonly HashSet<string> _seen = new(StringComparer.Ordinal);
    private readonly TouchstoneValueList _reference = new("[Reference]");
    private readonly TouchstoneValueList _modes = new("[Mixed-Mode Order]");
    private TouchstoneValueList? _open;
    private int _informationLine;
    private int? _points;
    private int? _noiseRows;
    private TouchstoneMatrix? _matrix;
    private bool _rowByRow;

    /// <summary>Whether the file has any keyword, and so is of version 2.</summary>
    public bool Any => _seen.Count > 0;

    /// <summary>Whether the next line is free text.</summary>
    public bool InInformation { get; private set; }

    /// <summary>The header that the keywords make.</summary>
    public TouchstoneHeader Header(TouchstoneOptions options, int firstLine) => new(ports, options, firstLine)
    {
        HasKeywords = true,
        Matrix = _matrix ?? TouchstoneMatrix.Full,
        ColumnByColumn = ports == 2 && !_rowByRow,
        Points = _points,
        NoiseRows = _noiseRows,
    };

    /// <summary>Passes over a line of free text, to its end keyword.</summary>
    public void Information(ReadOnlySpan<byte> bare) =>
        InInformation = bare.IsEmpty || bare[0] != (byte)'[' || TouchstoneKeyword.Parse(bare)?.Name != "endinformation";

    /// <summary>Takes a keyword line; false at [Network Data] and at a fault.</summary>
    public bool Take(ReadOnlySpan<byte> bare, int index)
    {
        _open = null;
        if (TouchstoneKeyword.Parse(bare) is not { } keyword)
        {
            return Refuse(index, "a bracket is opened and not closed", "correct the keyword, such as [Network Data]");
        }

        if (!Any && keyword.Name != "version")
        {
            return Refuse(index, $"the keyword {keyword.Shown} stands before [Version]",
                "put [Version] 2.0 above all other keywords, or export version 1, which has none");
        }

        if (!_seen.Add(keyword.Name))
        {
            return Refuse(index, $"the keyword {keyword.Shown} is given twice", "leave one of them out");
        }

        return Take(keyword, index);
    }

    private bool Take(TouchstoneKeyword keyword, int index) => keyword.Name switch
    {
        "version" => Expect(index, keyword, value => value is "2.0" or "2.1",
            "2.0 or 2.1: export the file again in one of these, or in version 1, which has no keywords"),
        "numberofports" => Expect(index, keyword, value => Count(value) == ports,
            FormattableString.Invariant(
                $"{ports}, as the file's extension tells; rename the file to .sNp where N is another number of ports")),
        "two-portdataorder" => Expect(index, keyword, value => (_rowByRow = value == "12_21") || value == "21_12",
            "the order that the instrument wrote, 12_21 or 21_12: export again"),
        "numberoffrequencies" => Expect(index, keyword, value => (_points = Count(value)) > 0, "a count of at least 1"),
        "numberofnoisefrequencies" => Expect(index, keyword, value => (_noiseRows = Count(value)) >= 0, "a count"),
        "matrixformat" => Expect(index, keyword, value => (_matrix = Matrix(value)) is not null, "Full, Lower or Upper"),
        "reference" => Open(_reference, keyword, index),
        "mixed-modeorder" => Open(_modes, keyword, index),
        "begininformation" => InInformation = (_informationLine = index + 1) > 0,
        "networkdata" => false,
        _ => Refuse(index, $"{keyword.Shown} is not a keyword that may stand here",
            "correct its spelling or remove the line; the data begin with [Network Data]"),
    };

    /// <summary>Takes the values that follow a keyword on lines of their own; false at a fault.</summary>
    public bool TakeValues(ReadOnlySpan<byte> bare, int index)
    {
        if (_open is null)
        {
            return Refuse(index, $"'{TouchstoneLine.Shown(bare)}' stands before [Network Data]",
                "put [Network Data] above the rows of numbers");
        }

        _open.Add(TouchstoneLine.Words(bare));
        return true;
    }

    /// <summary>Whether all that must be there is; true for version 1.</summary>
    public bool IsComplete()
    {
        if (!Any)
        {
            return true;
        }

        if (InInformation)
        {
            return Refuse(_informationLine - 1, "[Begin Information] is not closed", "put [End Information] below the text");
        }

        return IsThere("networkdata", "[Network Data]") && IsThere("numberofports", "[Number of Ports]") && OrderIsStated()
            && ReferencesAreThere() && ModesArePorts() && Remarks();
    }

    private bool IsThere(string name, string shown) =>
        _seen.Contains(name) || Refuse(null, $"the keyword {shown} is missing", "export the file again: it is incomplete");

    private bool OrderIsStated() =>
        ports != 2 || _seen.Contains("two-portdataorder") ||
        Refuse(null, "the keyword [Two-Port Data Order] is missing, so S21 and S12 cannot be told apart",
            "export again with [Two-Port Data Order]; only the instrument can say which order it wrote");

    // They do not matter to a ratio of waves, but a list of wrong length tells a damaged file or a wrong number of ports.
    private bool ReferencesAreThere()
    {
        bool good = _reference.Line is null ||
            (_reference.Values.Count == ports && _reference.Values.TrueForAll(
                v => double.TryParse(v, NumberStyles.Float, CultureInfo.InvariantCulture, out double ohm) && ohm > 0
                    && double.IsFinite(ohm)));
        return good || Refuse(_reference.Line - 1,
            FormattableString.Invariant($"[Reference] holds '{_reference.Shown}', not {ports} resistances"),
            "give one resistance in Ω for each port");
    }

    private bool ModesArePorts()
    {
        if (_modes.Line is null)
        {
            return true;
        }

        bool plain = _modes.Values.TrueForAll(v => v.Length > 1 && v[0] is 'S' or 's');
        if (!plain)
        {
            return Refuse(_modes.Line - 1, $"the file holds mixed-mode parameters ({_modes.Shown}), which are not those of "
                + "its ports", "export single-ended S parameters");
        }

        return _modes.Values.Select(v => v[1..])
            .SequenceEqual(Enumerable.Range(1, ports).Select(p => p.ToString(CultureInfo.InvariantCulture))) ||
            Refuse(_modes.Line - 1, $"[Mixed-Mode Order] lists the ports as {_modes.Shown}, not in their order",
                "export the file with the ports in order");
    }

    private bool Remarks()
    {
        if (_points is null)
        {
            faults.Assume("[Number of Frequencies] is missing; whether all points are there could not be checked");
        }

        if (ports != 2 && _seen.Contains("two-portdataorder"))
        {
            faults.Assume(FormattableString.Invariant($"[Two-Port Data Order] does not count in a file of {ports} ports"));
        }

        return true;
    }

    private bool Open(TouchstoneValueList list, TouchstoneKeyword keyword, int index)
    {
        list.Line = index + 1;
        list.Add(keyword.Values);
        _open = list;
        return true;
    }

    private bool Expect(int index, TouchstoneKeyword keyword, Func<string, bool> good, string expected) =>
        (keyword.Values.Length == 1 && good(keyword.Values[0])) ||
        Refuse(index, $"{keyword.Shown} holds '{TouchstoneValueList.Short(keyword.Values)}'", $"it must be {expected}");

    private bool Refuse(int? index, string problem, string remedy)
    {
        faults.Add(index + 1, problem, remedy);
        return false;
    }

    private static int? Count(string word) =>
        int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out int count) ? count : null;

    private static TouchstoneMatrix? Matrix(string word) => word.ToUpperInvariant() switch
    {
        "FULL" => TouchstoneMatrix.Full,
        "LOWER" => TouchstoneMatrix.Lower,
        "UPPER" => TouchstoneMatrix.Upper,
        _ => null,
    };
}
