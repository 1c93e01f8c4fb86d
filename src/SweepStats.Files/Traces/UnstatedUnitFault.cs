namespace SweepStats.Files.Traces;

/// <summary>
/// Says that a file does not tell its units, and by which lines of campaign.toml that is settled: all of them at once.
/// </summary>
internal static class UnstatedUnitFault
{
    /// <summary>What is wrong where the unit of level is missing.</summary>
    public const string LevelProblem = "the file does not say the unit of level";

    /// <summary>What to do beside something else where the unit of level is missing too.</summary>
    public const string LevelToo =
        $"the file does not say their unit either: set level_unit under [setup] in campaign.toml ({Impedance})";

    private const string FrequencyProblem = "the file does not say the unit of frequency";
    private const string Impedance = "and impedance_ohm, if voltages are not across 50 Ω";

    /// <summary>The unit of frequency is missing.</summary>
    /// <param name="file">The file.</param>
    /// <param name="line">The line that ought to say it; null where no single one.</param>
    /// <param name="problem">What is wrong; null for the usual words.</param>
    /// <param name="inFile">What to change in the file; null for the usual words.</param>
    public static ReadFault Frequency(string file, int? line = null, string? problem = null, string? inFile = null) => new(
        file, line, problem ?? FrequencyProblem,
        $"{inFile ?? "name the column 'frequency_hz' or the like"}, or set frequency_unit (Hz, kHz, MHz or GHz) under [setup] "
            + "in campaign.toml")
    { Unstated = UnstatedUnits.Frequency };

    /// <summary>The unit of level is missing.</summary>
    /// <param name="file">The file.</param>
    /// <param name="problem">What is wrong; null for the usual words.</param>
    /// <param name="inFile">What to change in the file.</param>
    public static ReadFault Level(string file, string? problem = null,
        string inFile = $"use {LevelUnits.Words} in the header") => new(
        file, null, problem ?? LevelProblem, $"{inFile}, or set level_unit under [setup] in campaign.toml ({Impedance})")
        { Unstated = UnstatedUnits.Level };

    /// <summary>The unit of level is missing in a layout that has no place for it.</summary>
    public static ReadFault InSettingsAlone(string file) =>
        new(file, null, LevelProblem, $"set level_unit ({LevelUnits.Words}) under [setup] in campaign.toml "
            + $"({Impedance})")
        { Unstated = UnstatedUnits.Level };

    /// <summary>
    /// What a file that does not say its unit of frequency lacks beside it, as reading it in any unit shows: its levels are not
    /// looked at before the unit is known, and a second fault must not come to light only after the first is mended.
    /// </summary>
    /// <param name="refused">The reading without the unit.</param>
    /// <param name="readInAnyUnit">Reads the file as a campaign would, its frequencies in some unit.</param>
    public static TraceReading Completed(TraceReading refused, Func<TraceReading> readInAnyUnit)
    {
        if (refused.Faults is not [{ Unstated: UnstatedUnits.Frequency } frequency])
        {
            return refused;
        }

        // What stands in a line may depend on the unit that was tried.
        ReadFault[] further = [.. readInAnyUnit().Faults.Where(f => f.Line is null || f.Unstated == UnstatedUnits.Level)];
        return refused with
        {
            Faults = [further.Any(f => f.Unstated == UnstatedUnits.Level) ? Both(frequency) : frequency,
                .. further.Where(f => f.Unstated == UnstatedUnits.None)],
        };
    }

    private static ReadFault Both(ReadFault frequency) => frequency with
    {
        Problem = "the file says neither the unit of frequency nor that of level",
        Remedy = "set both under [setup] in campaign.toml: frequency_unit (Hz, kHz, MHz or GHz) and level_unit "
            + $"({LevelUnits.Words}, {Impedance}), or say both in the header of the file",
        Unstated = UnstatedUnits.Frequency | UnstatedUnits.Level,
    };
}
