using SweepStats.Files.Traces.Preambles;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Decides in which unit the frequencies of a table are: as its name, its rows, the lines above or the campaign say, in this order.</summary>
internal static class FrequencyUnitChoice
{
    // 1e9 kHz would be 1 THz, beyond what sweeps of shielding reach.
    private const double OnlyHertz = 1e9;

    /// <summary>The unit; null, with the reason among the faults, where nothing tells it.</summary>
    public static FrequencyUnit? Of(TableSight table, int column, ColumnName name, (Preamble Preamble, TraceReadOptions Options, FaultList Faults) known)
    {
        FrequencyUnit? unit = Found(table, column, name, known);
        if (unit is { } found && known.Options is { IsOwnFrequencyUnit: true, FrequencyUnit: { } told } && told != found)
        {
            known.Faults.Add(OtherUnit.OfFrequency(known.Faults.File, found, known.Options));
            return null;
        }

        return unit;
    }

    private static FrequencyUnit? Found(TableSight table, int column, ColumnName name, (Preamble Preamble, TraceReadOptions Options, FaultList Faults) known)
    {
        if (table.Units?.IsHertz(column) == true)
        {
            return FrequencyUnit.Hertz;
        }

        if (name.StrangeUnit is { } strange)
        {
            known.Faults.Add(null, $"'{strange}' is not a unit of frequency that can be read", "give frequencies in Hz, kHz, MHz or GHz and say so in the header, such as 'frequency_hz'");
            return null;
        }

        if (name.FrequencyUnit is { } named)
        {
            return named;
        }

        if ((known.Preamble.FrequencyUnit ?? OfRange(table.Value(0, column), known.Preamble.Start)
            ?? OfRange(table.Value(table.Rows - 1, column), known.Preamble.Start)) is { } stated)
        {
            return stated;
        }

        if (known.Options.FrequencyUnit is { } told)
        {
            known.Faults.Assume($"frequencies are in {told.Symbol()}, as {known.Options.StatedIn} says");
            return told;
        }

        if (table.Value(table.Rows - 1, column) >= OnlyHertz)
        {
            known.Faults.Assume("the file does not say the unit of frequency; Hz was taken, since in kHz the last would lie at 1 THz or above");
            return FrequencyUnit.Hertz;
        }

        known.Faults.Add(UnstatedUnitFault.Frequency(known.Faults.File));
        return null;
    }

    // A start frequency stated with its unit tells the unit of the column that begins there.
    private static FrequencyUnit? OfRange(double first, StatedNumber? start)
    {
        if (start?.Hertz() is not { } hertz || hertz <= 0)
        {
            return null;
        }

        foreach (FrequencyUnit unit in Enum.GetValues<FrequencyUnit>())
        {
            if (Math.Abs((first * Math.Pow(10, unit.Exponent())) - hertz) <= 1e-6 * hertz)
            {
                return unit;
            }
        }

        return null;
    }
}
