using SweepStats.Files;

namespace SweepStats.Library;

/// <summary>A campaign that cannot be analysed. Its message says for each place what is wrong and what to do.</summary>
public sealed class UnreadableCampaignException : Exception
{
    /// <summary>Of faults of the files.</summary>
    /// <param name="faults">At least one.</param>
    public UnreadableCampaignException(ImmutableArray<ReadFault> faults)
        : base(string.Join('\n', FaultDigest.Of(faults))) => Faults = faults;

    /// <summary>Of sweeps that do not go together.</summary>
    /// <param name="message">What keeps them from it, and what to do.</param>
    /// <param name="cause">What found it.</param>
    public UnreadableCampaignException(string message, Exception cause)
        : base(message, cause) => Faults = [];

    /// <summary>Each fault by itself, in the order of the files; empty where the files by themselves are sound.</summary>
    public ImmutableArray<ReadFault> Faults { get; }
}
