using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>How much a finding weighs.</summary>
public enum Severity
{
    /// <summary>Informs.</summary>
    Note,

    /// <summary>Limits what may be claimed.</summary>
    Warning,

    /// <summary>Makes the measurement untrustworthy.</summary>
    Fault,
}

/// <summary>Something about the measurement that a reader must know. Immutable.</summary>
public sealed record Finding
{
    /// <summary>Name of the check, in kebab case.</summary>
    public required string Code { get; init; }

    /// <summary>How much it weighs.</summary>
    public required Severity Severity { get; init; }

    /// <summary>What was found, with its figures.</summary>
    public required string Message { get; init; }

    /// <summary>The figures and the test or rule that the finding rests on, in one sentence.</summary>
    public required string Basis { get; init; }

    /// <summary>What to do next at the bench.</summary>
    public required string NextStep { get; init; }

    /// <summary>Which sweeps it concerns; null for all.</summary>
    public SweepRole? Role { get; init; }

    /// <summary>Which specimen it concerns; null for all.</summary>
    public SpecimenName? Specimen { get; init; }

    /// <summary>Which lot it concerns as a whole; null for all, or where it concerns one specimen.</summary>
    public string? Lot { get; init; }

    /// <summary>Whether it names neither specimen nor lot.</summary>
    public bool IsOfAll => Specimen is null && Lot is null;

    /// <summary>Whether it is of a specimen: by its name, its lot, or because it is of all.</summary>
    /// <param name="specimen">The specimen; null for what is of none, which only findings of all concern.</param>
    public bool Concerns(SpecimenName? specimen) =>
        (Specimen is null || Specimen == specimen) && (Lot is null || Lot == specimen?.Lot);

    /// <summary>Name of the one sweep it concerns; null for all of the role and specimen.</summary>
    public string? Sweep { get; init; }

    /// <summary>Stretches of neighbouring frequencies it concerns, rising; empty for all.</summary>
    public ImmutableArray<FrequencyBand> Where { get; init; } = [];

    /// <summary>How far the true shielding may lie outside the interval for it; null where the interval allows for it.</summary>
    public Bias? Bias { get; init; }

    /// <summary>
    /// Whether what else is found may only follow from it: what those findings ask for would lead astray until it is settled.
    /// </summary>
    public bool Misleads { get; init; }

    /// <summary>
    /// Codes of the findings that stand against any preference: faults, and those that others mislead under; each once.
    /// </summary>
    internal static ImmutableArray<string> ToSettleFirst(ImmutableArray<Finding> findings) =>
        [.. findings.Where(f => f.Severity == Severity.Fault || f.Misleads).Select(f => f.Code).Distinct()];

    /// <summary>
    /// Whether frequencies that may have been asked about were left out: what is met at the others is not met everywhere.
    /// </summary>
    public bool LeavesFrequenciesOut { get; init; }

    /// <summary>The same where it differs between frequencies; empty where it does not.</summary>
    public ImmutableArray<PlacedBias> Biases { get; init; } = [];

    /// <summary>How much it matters in dB, where that can be said.</summary>
    public Decibels? Size { get; init; }
}
