using SweepStats.Bands;
using SweepStats.Files.Traces;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>What campaign.toml says.</summary>
internal sealed record CampaignSettings
{
    public string? Title { get; init; }

    /// <summary>Whether the sweeps were drawn and not measured.</summary>
    public bool Rehearsed { get; init; }

    /// <summary>Who tested what with which instrument, as far as it is stated.</summary>
    public TestIdentity Identity { get; init; } = TestIdentity.Unstated;

    public AnalysisPlan Plan { get; init; } = new();

    /// <summary>Frequencies of the plan's budgets, each with its line.</summary>
    public ImmutableArray<(Hertz At, int Line)> BudgetFrequencies { get; init; } = [];

    /// <summary>The plan's named bands, each with its line.</summary>
    public ImmutableArray<(NamedBand Named, int Line)> NamedBands { get; init; } = [];

    /// <summary>Columns of sweeps.csv that hold properties of specimens for choosing among them.</summary>
    public ImmutableArray<PropertyColumn> PropertyColumns { get; init; } = [];

    /// <summary>The column that puts specimens in an order; null where they have none.</summary>
    public PropertyColumn? OrderedBy { get; init; }

    /// <summary>All columns of the user's own; a column may be in both sections and is then read once.</summary>
    public ImmutableArray<PropertyColumn> OwnColumns =>
        OrderedBy is { } order ? [.. PropertyColumns.Where(c => c.Key != order.Key), order] : PropertyColumns;

    /// <summary>The yardstick as written, with its line; null where there is none.</summary>
    public StatedSpecimen? Yardstick { get; init; }

    /// <summary>Specimens that truly shield nothing, as written.</summary>
    public ImmutableArray<StatedSpecimen> ShieldNothing { get; init; } = [];

    /// <summary>Where the line of the requirement is stated; null where there is none.</summary>
    public (string File, int? Line)? RequirementAt { get; init; }

    /// <summary>What is said of some files by themselves; the first that matches a file holds for it.</summary>
    public ImmutableArray<FileStatement> Files { get; init; } = [];

    public FrequencyUnit? FrequencyUnit { get; init; }

    public LevelUnit? LevelUnit { get; init; }

    /// <summary>Impedance that voltages are measured across; null where not stated.</summary>
    public double? ImpedanceOhm { get; init; }

    /// <summary>What is known of a file beside its content.</summary>
    public TraceReadOptions Known(string file)
    {
        TraceReadOptions said = Files.FirstOrDefault(f => f.Matches(file))?.Said ?? new TraceReadOptions();
        return said with { FrequencyUnit = said.FrequencyUnit ?? FrequencyUnit, LevelUnit = said.LevelUnit ?? LevelUnit };
    }

    public ImmutableArray<ReadFault> Faults { get; init; } = [];

    public ImmutableArray<InputFile> Inputs { get; init; } = [];

    public ImmutableArray<string> Assumptions { get; init; } = [];
}
