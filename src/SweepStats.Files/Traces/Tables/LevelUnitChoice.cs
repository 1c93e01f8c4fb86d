using SweepStats.Files.Traces.Preambles;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Decides in which unit a column of levels is: as its rows, its name, the lines above or the campaign say, in this order.
/// </summary>
internal sealed class LevelUnitChoice(TableSight table, TraceReadOptions options, Preamble preamble, FaultList faults)
{
    // Linear magnitudes of passive parts end at 1; a gain that stayed within 0 to 1.1 dB everywhere would not be called a
    // magnitude.
    private const double LargestPassive = 1.1;

    /// <summary>The unit; null where nothing tells it.</summary>
    /// <param name="names">All columns.</param>
    /// <param name="index">Place of the column from 0.</param>
    /// <param name="label">Its name in messages.</param>
    /// <param name="format">What the lines above say that it shows; null where they do not.</param>
    public LevelUnit? Of(ImmutableArray<ColumnName> names, int index, string label, string? format)
    {
        LevelUnit? unit = Find(names, index, label, format);
        if (unit is { } stated && options is { IsOwnLevelUnit: false, LevelUnit: { } told } && stated != told)
        {
            faults.Assume($"column {label} was read in {stated.Symbol()}, as the file has it; the level unit {told.Symbol()} "
                + $"that {options.StatedIn} says was not used");
        }

        return unit;
    }

    private LevelUnit? Find(ImmutableArray<ColumnName> names, int index, string label, string? format)
    {
        ColumnName name = names[index];
        if (table.Units?.Level(index) is { } own && name.LevelUnit is { } headed && own != headed)
        {
            faults.Add(null, $"the header gives column {label} in {headed.Symbol()} and its rows in {own.Symbol()}",
                "export the sweep again with one unit in header and rows, or remove the wrong one of the two");
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

        return OfQuantity(name, label) ?? preamble.LevelUnit ?? Told(label, format) ?? OfMagnitude(names, index, label);
    }

    private LevelUnit? OfQuantity(ColumnName name, string label)
    {
        if (name.IsLogMagnitude)
        {
            faults.Assume($"column {label} is a log magnitude and was taken in dB");
            return LevelUnit.Decibels;
        }

        return name.IsLinear && preamble.LevelUnit?.IsLinear() != true ? LevelUnit.LinearMagnitude : null;
    }

    private LevelUnit? Told(string label, string? format)
    {
        if (format is not null && FormatWords.UnitOf(format) is { } shown)
        {
            faults.Assume($"column {label} is in {shown.Symbol()}: the file states the format '{format}'");
            return shown;
        }

        if (options.LevelUnit is { } told)
        {
            faults.Assume($"levels of column {label} are in {told.Symbol()}, as {options.StatedIn} says");
            return told;
        }

        return null;
    }

    // The size of an S-parameter has no other unit than none or dB, and its numbers tell which.
    private LevelUnit? OfMagnitude(ImmutableArray<ColumnName> names, int index, string label)
    {
        ColumnName name = names[index];
        bool phased = names.Any(n => n.Part == ComplexPart.Phase && n.Parameter == name.Parameter);
        if (!name.IsMagnitude || (!phased && name.Parameter is null))
        {
            return null;
        }

        if (table.All(index, v => v is >= 0 and <= LargestPassive))
        {
            faults.Assume($"column {label} is a linear magnitude: "
                + $"{(phased ? "a phase stands beside it and it" : "it is that of an S-parameter and")} stays between 0 and 1.1");
            return LevelUnit.LinearMagnitude;
        }

        if (name.Parameter is not null && !table.All(index, v => v >= 0))
        {
            faults.Assume($"column {label} is the magnitude of an S-parameter and goes below 0, so it was taken in dB");
            return LevelUnit.Decibels;
        }

        return null;
    }
}
