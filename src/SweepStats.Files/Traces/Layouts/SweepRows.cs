using System.Text;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;
using SweepStats.Sweeps;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>The rows below a heading of frequencies, a sweep each.</summary>
internal sealed class SweepRows(TraceText text, SweepRowHeader header, FrequencyAxis axis, PriorKnowledge known)
{
    private readonly LevelUnit? _headed = header.Lead.Select(l => ColumnName.Of(l).LevelUnit).FirstOrDefault(u => u is not null);
    private bool _told;
    private string? _statistic;
    private int _rows;

    /// <summary>
    /// A trace for each row of levels, up to the first line that is none; those above the heading in the order of the file.
    /// </summary>
    public ImmutableArray<Trace> Read()
    {
        var traces = ImmutableArray.CreateBuilder<Trace>();
        for (int? line = DataBlock.NextLine(text, header.Step > 0 ? header.LastLine : header.Line,
            header.Step); line is { } index; line = DataBlock.NextLine(text, index, header.Step))
        {
            List<string> fields = FieldReader.Texts(text.Line(index), header.Separator);
            if (!IsFull(fields, index))
            {
                break;
            }

            ColumnName[] lead = [.. fields.Take(header.Lead.Count).Select(f => ColumnName.Of(f))];
            if (Other(lead) is { } other)
            {
                known.Faults.Assume(FormattableString.Invariant(
                    $"line {index + 1}, '{other.Text}', was taken for {Taken(other)} and not read; rename the row if it ")
                    + "holds levels");
                continue;
            }

            if (TraceOf(fields, lead, index, traces.Count) is not { } trace)
            {
                break;
            }

            CheckStatistics(index + 1, lead);
            traces.Add(trace);
        }

        if (header.Step < 0)
        {
            traces.Reverse();
        }

        return known.Options.Columns.IsEmpty ? traces.ToImmutable()
            : AskedTraces.Pick(traces.ToImmutable(), known.Options.Columns, known.Faults);
    }

    // A line of other width ends the rows; one that is nearly a row is told.
    private bool IsFull(List<string> fields, int index)
    {
        int full = header.Lead.Count + axis.Hertz.Length;
        int numbers = fields.Count(f => Number(f) is not null);
        if (fields.Count != full && numbers > header.Lead.Count && (header.Step > 0 || numbers * 2 > axis.Hertz.Length))
        {
            known.Faults.Add(index + 1, FormattableString.Invariant($"the row has {fields.Count} fields and the heading {full}"),
                "complete the row or export the sweeps again");
        }

        return fields.Count == full;
    }

    // A limit, a phase or a correction over the same frequencies. A plain word such as "no" or "n" may name a sweep.
    private static ColumnName? Other(ColumnName[] lead) =>
        Array.Find(lead,
            n => n.IsLimit
                || (n.LevelUnit is not null && (n.Kind == ColumnKind.Other
                    || (n.IsCorrection && !n.IsGain && n.Parameter is null)))
                || (n.LevelUnit is null && n.Part is ComplexPart.Phase or ComplexPart.Imaginary));

    private static string Taken(ColumnName name) =>
        name.IsLimit ? "a limit" : name.LevelUnit is not null ? "an uncertainty, a correction or another quantity"
            : name.Part == ComplexPart.Phase ? "a phase" : "the imaginary part of a complex number";

    // Sweeps and their highest, lowest or mean are no repeats of each other.
    private void CheckStatistics(int line, ColumnName[] lead)
    {
        string? statistic = lead.Select(n => n.Statistic).FirstOrDefault(s => s is not null);
        if (_rows > 0 && statistic != _statistic && known.Options.Columns.IsEmpty)
        {
            known.Faults.Add(
                line, "some rows are the highest, lowest or mean of the same sweeps, or come from other detectors, which are no "
                    + "repeats of each other", "remove such rows, or name the row to read "
                        + known.Options.NamedWhere.Replace("header", "name", StringComparison.Ordinal));
        }

        (_statistic, _rows) = (statistic, _rows + 1);
    }

    private Trace? TraceOf(List<string> fields, ColumnName[] lead, int index, int before)
    {
        int line = index + 1;
        if (Levels(fields, line) is not { } levels)
        {
            return null;
        }

        string label = Label(lead);
        LevelUnit? unit = lead.FirstOrDefault(n => n.LevelUnit is not null)?.LevelUnit ?? _headed ?? known.Preamble.LevelUnit
            ?? Told();
        var column = new LevelColumn(header.Lead.Count, label, unit) { Asked = !known.Options.Columns.IsEmpty };
        return new Trace(label, "level", unit, axis, [.. levels])
        {
            Settings = SettingsOf(lead),
            TakenAt = SweepDate.Parse(string.Join(' ', lead.Select(n => n.Text)))?.At
                ?? (before == 0 ? known.Preamble.Taken.At : null),
            Blank = LevelDoubts.Blank(unit, levels),
            Doubts = unit is null
                ? [UnstatedUnitFault.Level(text.File, inFile: $"write {LevelUnits.Words} before the levels, as in 'Level (dBm)'")]
                : LevelDoubts.Of(column, levels, new(text.File, _ => line)),
        };
    }

    private double[]? Levels(List<string> fields, int line)
    {
        var levels = new double[axis.Hertz.Length];
        for (int i = 0; i < levels.Length; i++)
        {
            string field = fields[header.Lead.Count + i];
            if (Number(field) is not { } level)
            {
                known.Faults.Add(line, $"'{(field.Length <= 40 ? field : field[..40] + "…")}' is not a finite number",
                    "correct the row or export the sweeps again");
                return null;
            }

            levels[i] = level;
        }

        return levels;
    }

    private string Label(ColumnName[] lead)
    {
        int titled = Math.Max(0, Array.FindIndex(lead, n => n.Text.Length > 0 && !n.IsBareUnit));
        string text = lead[titled].Text;
        return (Number(text) is null ? text : $"{header.Lead[titled]} {text}".Trim()) + TimeBehind(lead, titled);
    }

    // Rows of one day are told apart by their times.
    private static string TimeBehind(ColumnName[] lead, int titled) =>
        SweepDate.Parse(lead[titled].Text) is not null && titled + 1 < lead.Length
            && lead[titled + 1].Text is { Length: > 0 } time && char.IsAsciiDigit(time[0])
            && time.Contains(':', StringComparison.Ordinal)
            ? " " + time : "";

    // A column of the heading may be called "Detector", and the name of a sweep may tell it.
    private ReceiverSettings SettingsOf(ColumnName[] lead)
    {
        string? Stated(Setting setting)
        {
            int at = header.Lead.ToList().FindIndex(h => SettingKeys.Find(h.Trim().ToLowerInvariant())?.Setting == setting);
            return at >= 0 && lead[at].Text.Length > 0 ? lead[at].Text : null;
        }

        ReceiverSettings own = new()
        {
            Detector = Stated(Setting.Detector),
            TraceMode = Stated(Setting.TraceMode),
            Averaging = Stated(Setting.Averaging),
        };
        return lead.Aggregate(SharedSettings.Over(known.Preamble.Settings, own), NamedDetector.Beside);
    }

    private LevelUnit? Told()
    {
        if (known.Options.LevelUnit is { } told && !_told)
        {
            known.Faults.Assume($"levels are in {told.Symbol()}, as {known.Options.StatedIn} says");
            _told = true;
        }

        return known.Options.LevelUnit;
    }

    private double? Number(string field) =>
        StrictNumber.TryParse(Encoding.UTF8.GetBytes(field), header.Separator.DecimalMark, 0, out double value) ? value : null;
}
