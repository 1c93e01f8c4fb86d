using SweepStats.Sweeps;

namespace SweepStats.Files.Proposals;

/// <summary>What the name of a folder, a file or a column tells. Immutable.</summary>
internal sealed record NamePart
{
    /// <summary>The name.</summary>
    public required string Text { get; init; }

    /// <summary>Words that tell a role.</summary>
    public required ImmutableArray<RoleWord> Roles { get; init; }

    /// <summary>What words such as "lot" say of the name behind them.</summary>
    public required ImmutableDictionary<PlaceKind, string> Said { get; init; }

    /// <summary>The date in it.</summary>
    public NameDate? Date { get; init; }

    /// <summary>What is left: chunks that no word explains, in their order.</summary>
    public required ImmutableArray<NameChunk> Left { get; init; }

    /// <summary>The only role that it tells; null where it tells none or several.</summary>
    public SweepRole? Role => Roles.Select(r => r.Role).Distinct().ToArray() is [var only] ? only : null;

    /// <summary>The words that tell its role, for a person.</summary>
    public string RoleText => string.Join("', '", Roles.Select(r => r.Text).Distinct());
}
