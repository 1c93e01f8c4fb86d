using System.Text.Json.Serialization;

namespace SweepStats.Files.Summaries;

/// <summary>What came, went, and is another under its old name.</summary>
/// <param name="Changed">Names of what is in both results and differs.</param>
/// <param name="New">Names that only the later result has.</param>
/// <param name="Gone">Names that only the earlier result has.</param>
public sealed record NameChanges(ImmutableArray<string> Changed, ImmutableArray<string> New, ImmutableArray<string> Gone)
{
    /// <summary>Whether both results have the same.</summary>
    [JsonIgnore]
    public bool AreNone => Changed.IsEmpty && New.IsEmpty && Gone.IsEmpty;

    internal static NameChanges Between(IEnumerable<NamedWord> earlier, IEnumerable<NamedWord> later)
    {
        NamedWord[] before = [.. earlier], after = [.. later];
        HashSet<string> old = [.. before.Select(w => w.Name)], now = [.. after.Select(w => w.Name)];
        return new NameChanges(
            [.. WordChange.Between(before, after).Select(c => c.Name).Where(name => old.Contains(name) && now.Contains(name))],
            [.. after.Select(w => w.Name).Where(name => !old.Contains(name)).Distinct()],
            [.. before.Select(w => w.Name).Where(name => !now.Contains(name)).Distinct()]);
    }
}
