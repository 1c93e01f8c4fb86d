using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>What came of one listed file.</summary>
/// <param name="File">The file within the campaign.</param>
/// <param name="Sweeps">Its sweeps.</param>
/// <param name="Faults">What is wrong with it.</param>
/// <param name="Assumptions">What was taken for granted.</param>
/// <param name="Sha256">SHA-256 of its bytes; empty where it could not be opened.</param>
/// <param name="HoldsVoltages">Whether a level is a voltage, so that the impedance matters.</param>
internal sealed record FileSweeps(
    string File, ImmutableArray<Sweep> Sweeps, ImmutableArray<ReadFault> Faults, ImmutableArray<string> Assumptions,
    string Sha256, bool HoldsVoltages);
