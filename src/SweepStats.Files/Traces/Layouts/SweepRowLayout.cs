using System.Collections.Immutable;
using System.Text;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>
/// A row for each sweep: frequencies are the titles of the columns, and number, date or name of the sweep stand before the
/// levels.
/// </summary>
internal sealed class SweepRowLayout : ITraceLayout
{
    /// <inheritdoc/>
    public bool Recognises(TraceText text) => SweepRowHeader.Find(text) is not null;

    /// <inheritdoc/>
    public TraceReading Read(TraceText text, TraceReadOptions options)
    {
        var faults = new FaultList(text.File);
        SweepRowHeader header = SweepRowHeader.Find(text)!;
        Preamble preamble = Preamble.Read(text, header.Line);
        faults.AssumeAll(preamble.Remarks);
        if (Axis(header, preamble, options, faults) is not { } axis)
        {
            return new TraceReading { Faults = faults.All };
        }

        faults.Assume("the columns are headed by frequencies: each row was read as a sweep");
        var rows = new SweepRows(text, header, axis, new(preamble, options, faults));
        ImmutableArray<Trace> traces = rows.Read();
        if (!faults.Any && traces.IsEmpty)
        {
            faults.Add(header.Line + 1, "no row below the frequencies holds levels", "export the sweeps again");
        }

        return faults.Any
            ? new TraceReading { Faults = faults.All }
            : new TraceReading { Traces = traces, Settings = preamble.Settings, Assumptions = faults.Assumptions };
    }

    private static FrequencyAxis? Axis(SweepRowHeader header, Preamble preamble, TraceReadOptions options, FaultList faults)
    {
        ColumnName? named = header.Lead.Select(l => ColumnName.Of(l)).FirstOrDefault(n => n.FrequencyUnit is not null);
        bool glued = header.Frequencies.All(f => UnitWord.StartIn(Encoding.UTF8.GetBytes(f)) > 0);
        FrequencyUnit? unit = header.Unit ?? named?.FrequencyUnit ?? preamble.FrequencyUnit;
        if (header.Unit is { } below && (named?.FrequencyUnit ?? preamble.FrequencyUnit ?? below) != below)
        {
            faults.Add(header.LastLine + 1, $"the row of units states {below.Symbol()}, and the heading or the lines above "
                + "state another unit of frequency", "correct the one that is wrong");
            return null;
        }

        if (unit is null && !glued && options.FrequencyUnit is { } told)
        {
            faults.Assume($"frequencies are in {told.Symbol()}, as {options.StatedIn} says");
            unit = told;
        }

        if (unit is null && !glued)
        {
            faults.Add(UnstatedUnitFault.Frequency(
                faults.File, header.Line + 1, "the file does not say the unit of the frequencies that head its columns",
                "write it before them, as in 'Frequency (MHz)'"));
            return null;
        }

        if (unit is { } stated && options is { IsOwnFrequencyUnit: true, FrequencyUnit: { } own } && own != stated)
        {
            faults.Add(OtherUnit.OfFrequency(faults.File, stated, options));
            return null;
        }

        double[] hertz = [.. header.Frequencies.Select(f => SweepRowHeader.Hertz(f, header.Separator.DecimalMark, unit))];
        int bad = Array.FindIndex(hertz, f => !double.IsFinite(f) || f < 0);
        if (bad >= 0)
        {
            faults.Add(header.Line + 1, $"'{header.Frequencies[bad]}' is not a frequency",
                "correct the heading or export the sweeps again");
            return null;
        }

        return options.Grids.Of(hertz);
    }
}
