using SweepStats.Files.Traces.Preambles;

namespace SweepStats.Files.Traces.Tables;

/// <summary>One of several tables below each other.</summary>
/// <param name="Run">Its rows.</param>
/// <param name="Names">The names of its columns; null where nothing names them.</param>
/// <param name="Own">What the lines between it and the table above state.</param>
/// <param name="Label">What its traces are called by.</param>
internal sealed record StackedTable(NumericRun Run, ImmutableArray<ColumnName>? Names, Preamble Own, string Label)
{
    /// <summary>Why the lines above it say that it holds no levels; null where they do not.</summary>
    public string? OtherContent =>
        Own.FormatOf(0, 1) is { } format && FormatWords.IsNoLevel(format) ? $"shows '{format}'"
        : BlockLabel.Other(Label, Names?.Any(n => n.LevelUnit is not null) == true || Run.Units is not null) is { } other
            ? $"is called '{other}'"
        : null;

    /// <summary>Whether none of its names may be that of a level.</summary>
    public bool HoldsNoLevel => Names is { } named
        && !named.Any(n => n.Kind is ColumnKind.Level or ColumnKind.Unknown || n.Part == ComplexPart.Real);

    /// <summary>Whether the lines above it state what its levels are.</summary>
    public bool StatesLevels => Own.LevelUnit is not null || Own.FormatOf(0, 1) is not null;

    /// <summary>The columns of another table, in the unit that the lines above this one state.</summary>
    public ChosenColumns Restated(ChosenColumns other) =>
        (Own.LevelUnit ?? (Own.FormatOf(0, 1) is { } format ? FormatWords.UnitOf(format) : null)) is not { } unit ? other
        : other with { Levels = [.. other.Levels.Select(l => l with { Unit = unit })] };

    /// <summary>A trace of the table: the lines above it may state its time and its detector.</summary>
    public Trace Labelled(Trace trace) => trace with
    {
        Column = Label + trace.Column,
        TakenAt = Own.Taken.At ?? trace.TakenAt,
        Settings = NamedDetector.Beside(SharedSettings.Over(trace.Settings, Own.Settings), ColumnName.Of(Label)),
    };
}
