using SweepStats.Files.Traces.Preambles;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Decides in which unit the frequencies of a table are: as its name, its rows, the lines above or the campaign say, in this
/// order.
/// </summary>
internal static class FrequencyUnitChoice
{
    // 1e9 kHz would be 1 THz, beyond what sweeps of shielding reach.
    public const double OnlyHertz = 1e9;

    /// <summary>The unit; null, with the reason among the faults, where nothing tells it.</summary>
    public static FrequencyUnit? Of(TableSight table, int column, ColumnName name, PriorKnowledge known)
    {
        FrequencyUnit? unit = Found(table, column, name, known);
        if (unit is not { } found || known.Options.FrequencyUnit is not { } told || told == found)
        {
            return unit;
        }

        if (known.Options.IsOwnFrequencyUnit)
        {
            known.Faults.Add(OtherUnit.OfFrequency(known.Faults.File, found, known.Options));
            return null;
        }

        known.Faults.Assume(
            $"frequencies were read in {found.Symbol()}, as the file has them; the frequency unit {told.Symbol()} that "
                + $"{known.Options.StatedIn} says was not used");
        return unit;
    }

    private static FrequencyUnit? Found(TableSight table, int column, ColumnName name, PriorKnowledge known)
    {
        if (table.Units?.IsHertz(column) == true)
        {
            return Contradicted(table, name) is { } both ? Refused(known.Faults, both) : FrequencyUnit.Hertz;
        }

        if (name.StrangeUnit is { } strange)
        {
            known.Faults.Add(null, $"'{strange}' is not a unit of frequency that can be read",
                "give frequencies in Hz, kHz, MHz or GHz and say so in the header, such as 'frequency_hz'");
            return null;
        }

        return name.FrequencyUnit ?? known.Preamble.FrequencyUnit ?? Untold(table, column, known);
    }

    // Neither the header nor a line above states the unit.
    private static FrequencyUnit? Untold(TableSight table, int column, PriorKnowledge known)
    {
        if (OfRange(table, column, known.Preamble) is { } ranged)
        {
            known.Faults.Assume($"frequencies are in {ranged.Unit.Symbol()}: the file states {ranged.Said}");
            return ranged.Unit;
        }

        if (known.Options.FrequencyUnit is { } told)
        {
            known.Faults.Assume($"frequencies are in {told.Symbol()}, as {known.Options.StatedIn} says");
            return told;
        }

        if (table.Value(table.Rows - 1, column) >= OnlyHertz)
        {
            known.Faults.Assume(
                "the file does not say the unit of frequency; Hz was taken, since in kHz the last would lie at 1 THz or above");
            return FrequencyUnit.Hertz;
        }

        known.Faults.Add(UnstatedUnitFault.Frequency(known.Faults.File));
        return null;
    }

    // A header in kHz over rows in MHz; rows may change their unit on the way.
    private static string? Contradicted(TableSight table, ColumnName name) =>
        name.FrequencyUnit is not { } headed || table.UnitIn(0) == headed || table.UnitIn(table.Rows - 1) == headed ? null
            : $"the header gives the frequencies in {headed.Symbol()} and the rows in "
                + $"{table.UnitIn(0)?.Symbol() ?? "another unit"}";

    private static FrequencyUnit? Refused(FaultList faults, string problem)
    {
        faults.Add(null, problem, "export the sweep again with one unit in header and rows, or remove the wrong one of the two");
        return null;
    }

    // A start or stop that is stated with its unit tells the unit of the column that begins or ends there.
    private static (FrequencyUnit Unit, string Said)? OfRange(TableSight table, int column, Preamble preamble)
    {
        (double first, double last) = (table.Value(0, column), table.Value(table.Rows - 1, column));
        bool falls = (preamble.Start?.Hertz() ?? preamble.Start?.Value()) > (preamble.Stop?.Hertz() ?? preamble.Stop?.Value());
        (first, last) = falls ? (first, last) : (Math.Min(first, last), Math.Max(first, last));
        return OfBound(first, preamble.StartBound) is { } start
            ? (start, FormattableString.Invariant(
                $"a start frequency of {preamble.StartBound!.Shown}, and the rows begin at {first:R}"))
            : OfBound(last, preamble.StopBound) is { } stop
            ? (stop, FormattableString.Invariant(
                $"a stop frequency of {preamble.StopBound!.Shown}, and the rows end at {last:R}"))
            : null;
    }

    private static FrequencyUnit? OfBound(double value, StatedBound? bound)
    {
        if (bound?.Hertz() is not { } hertz || hertz <= 0)
        {
            return null;
        }

        double tolerance = Math.Max(1e-6 * hertz, Math.Min(bound.RoundingHertz(), 0.05 * hertz));
        return Enum.GetValues<FrequencyUnit>().Cast<FrequencyUnit?>()
            .FirstOrDefault(unit => Math.Abs((value * Math.Pow(10, unit!.Value.Exponent())) - hertz) <= tolerance);
    }
}
