using SweepStats.Sweeps;

namespace SweepStats.Floor;

/// <summary>Where it is known from how the receiver averages.</summary>
public enum AveragingSource
{
    /// <summary>Nothing tells it.</summary>
    Unknown,

    /// <summary>The campaign states it.</summary>
    Stated,

    /// <summary>The words of the files state it.</summary>
    Files,

    /// <summary>The readings of the floor show it.</summary>
    Recognised,
}

/// <summary>How the receiver averages, as the analysis takes it. Immutable.</summary>
public sealed record AveragingInUse
{
    /// <summary>What is taken.</summary>
    public required Averaging Averaging { get; init; }

    /// <summary>Where that is known from.</summary>
    public required AveragingSource Source { get; init; }

    /// <summary>What the campaign states; unknown where it states nothing.</summary>
    public required Averaging Stated { get; init; }

    /// <summary>What the words of the files mean.</summary>
    public required FileWords Files { get; init; }

    /// <summary>What the skewness of the floor readings tells; null where no floor was measured.</summary>
    public required FloorSkewness? Skewness { get; init; }
}
