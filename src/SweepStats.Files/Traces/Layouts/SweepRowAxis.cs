using System.Text;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>The frequencies that head the columns of a file with a row for each sweep.</summary>
internal sealed class SweepRowAxis
{
    private readonly SweepRowHeader _header;
    private readonly PriorKnowledge _known;
    private readonly FrequencyUnit? _above;
    private readonly bool _glued;

    /// <summary>Looks for the unit before the frequencies, in the lines above, and behind every single frequency.</summary>
    public SweepRowAxis(SweepRowHeader header, PriorKnowledge known)
    {
        (_header, _known) = (header, known);
        _above = header.Lead.Select(l => ColumnName.Of(l).FrequencyUnit).FirstOrDefault(u => u is not null)
            ?? known.Preamble.FrequencyUnit;
        _glued = header.Frequencies.All(f => UnitWord.StartIn(Encoding.UTF8.GetBytes(f)) > 0);
    }

    /// <summary>The frequencies; null, with the reason among the faults, where their unit or one of them is none.</summary>
    public FrequencyAxis? Read()
    {
        if (_header.Unit is { } below && (_above ?? below) != below)
        {
            _known.Faults.Add(_header.LastLine + 1, $"the row of units states {below.Symbol()}, and the heading or the lines "
                + "above state another unit of frequency", "correct the one that is wrong");
            return null;
        }

        FrequencyUnit? unit = _header.Unit ?? _above ?? (_glued ? null : Told());
        if (unit is null && !_glued)
        {
            _known.Faults.Add(UnstatedUnitFault.Frequency(_known.Faults.File, _header.Line + 1,
                "the file does not say the unit of the frequencies that head its columns",
                "write it before them, as in 'Frequency (MHz)'"));
            return null;
        }

        if (unit is { } stated && _known.Options is { IsOwnFrequencyUnit: true, FrequencyUnit: { } own } && own != stated)
        {
            _known.Faults.Add(OtherUnit.OfFrequency(_known.Faults.File, stated, _known.Options));
            return null;
        }

        return Of(unit);
    }

    private FrequencyUnit? Told()
    {
        if (_known.Options.FrequencyUnit is { } told)
        {
            _known.Faults.Assume($"frequencies are in {told.Symbol()}, as {_known.Options.StatedIn} says");
        }

        return _known.Options.FrequencyUnit;
    }

    private FrequencyAxis? Of(FrequencyUnit? unit)
    {
        double[] hertz = [.. _header.Frequencies.Select(f => SweepRowHeader.Hertz(f, _header.Separator.DecimalMark, unit))];
        int bad = Array.FindIndex(hertz, f => !double.IsFinite(f) || f < 0);
        if (bad < 0)
        {
            return _known.Options.Grids.Of(hertz);
        }

        _known.Faults.Add(_header.Line + 1, $"'{_header.Frequencies[bad]}' is not a frequency",
            "correct the heading or export the sweeps again");
        return null;
    }
}
