using System.Collections.Immutable;

namespace SweepStats.Files.Traces;

/// <summary>What is known about a trace file beside its content. What the file states goes before.</summary>
public sealed record TraceReadOptions
{
    /// <summary>Unit of frequency for files that do not say.</summary>
    public FrequencyUnit? FrequencyUnit { get; init; }

    /// <summary>Unit of level for files that do not say.</summary>
    public LevelUnit? LevelUnit { get; init; }

    /// <summary>Columns wanted, by header or by number from 1, or S-parameters; empty for every level column.</summary>
    public ImmutableArray<string> Columns { get; init; } = [];

    /// <summary>Where these units are stated, as an assumption names it.</summary>
    public string StatedIn { get; init; } = "campaign.toml";

    /// <summary>Whether columns are named with --column and not in sweeps.csv.</summary>
    public bool ColumnsOnCommandLine { get; init; }

    /// <summary>Where columns are named, as a remedy says it: "name the column to read " and this.</summary>
    internal string NamedWhere =>
        ColumnsOnCommandLine ? "with --column (its header or its number), in a campaign in sweeps.csv (column)" : "in sweeps.csv (column = its header or its number)";

    /// <summary>What names the columns: "correct " and this.</summary>
    internal string NamedBy => ColumnsOnCommandLine ? "--column" : "'column' in sweeps.csv";

    internal GridMemory Grids { get; init; } = new();
}
