using System.Collections.Immutable;
using SweepStats.Files.Traces.Preambles;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Decides in which unit a column of levels is: as its rows, its name, the lines above or the campaign say, in this order.</summary>
internal sealed class LevelUnitChoice(TableSight table, TraceReadOptions options, Preamble preamble, FaultList faults)
{
    // Linear magnitudes of passive parts end at 1; a gain that stayed within 0 to 1.1 dB everywhere would not be called a magnitude.
    private const double LargestPassive = 1.1;

    /// <summary>The unit; null where nothing tells it.</summary>
    public LevelUnit? Of(ImmutableArray<ColumnName> names, int index, string label)
    {
        ColumnName name = names[index];
        if (table.Units?.Level(index) is { } own && name.LevelUnit is { } headed && own != headed)
        {
            faults.Add(
                null, $"the header gives column {label} in {headed.Symbol()} and its rows in {own.Symbol()}", "export the sweep again with one unit in header and rows, or remove the wrong one of the two");
            return null;
        }

        if ((table.Units?.Level(index) ?? name.LevelUnit) is { } named)
        {
            return named;
        }

        if (name.StrangeUnit is not null || name.FrequencyUnit is not null)
        {
            return null;
        }

        if (name.IsLogMagnitude)
        {
            faults.Assume($"column {label} is a log magnitude and was taken in dB");
            return LevelUnit.Decibels;
        }

        if (preamble.LevelUnit is { } stated)
        {
            return stated;
        }

        // What a person states of this file goes before what is only likely.
        if (!options.IsOwnLevelUnit && name.IsMagnitude && names.Any(n => n.Part == ComplexPart.Phase && n.Parameter == name.Parameter) && table.All(index, v => v is >= 0 and <= LargestPassive))
        {
            faults.Assume($"column {label} is a linear magnitude: a phase stands beside it and it stays between 0 and 1.1");
            return LevelUnit.LinearMagnitude;
        }

        if (options.LevelUnit is { } told)
        {
            faults.Assume($"levels of column {label} are in {told.Symbol()}, as {options.StatedIn} says");
            return told;
        }

        return null;
    }
}
