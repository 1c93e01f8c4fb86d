namespace SweepStats.Planning;

/// <summary>How many sweeps a campaign takes of one specimen and of the reference.</summary>
/// <param name="Placements">How often the specimen is put on, at least 1.</param>
/// <param name="SweepsEach">Sweeps of each placement, at least 1.</param>
/// <param name="ReferenceSweeps">Reference sweeps, at least 1.</param>
public readonly record struct SweepNumbers(int Placements, int SweepsEach, int ReferenceSweeps)
{
    /// <summary>Covered sweeps of one specimen.</summary>
    public int CoveredSweeps => Placements * SweepsEach;

    /// <summary>What counts as an independent repeat: placements, or the sweeps of a single one.</summary>
    public int Units => Placements > 1 ? Placements : SweepsEach;

    /// <summary>Whether both roles repeat, so that there is an interval at all.</summary>
    public bool Repeated => Units > 1 && ReferenceSweeps > 1;
}
