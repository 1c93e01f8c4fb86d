namespace SweepStats.Sweeps;

/// <summary>
/// The files of one role that could not be read: taken, but not in use, so that mending them and not measuring anew is what
/// helps. Immutable.
/// </summary>
/// <param name="Role">What their sweeps were taken for.</param>
/// <param name="Files">The files; not empty.</param>
public sealed record UnreadFiles(SweepRole Role, ImmutableArray<UnreadFile> Files)
{
    private const int MostReasons = 2;

    /// <summary>Those of a role; null where all of them could be read.</summary>
    /// <param name="unread">The files of all roles.</param>
    /// <param name="role">The role.</param>
    public static UnreadFiles? Of(ImmutableArray<UnreadFile> unread, SweepRole role) =>
        unread.Where(u => u.Role == role).ToImmutableArray() is { IsEmpty: false } files ? new UnreadFiles(role, files) : null;

    /// <summary>"12 reference files could not be read (the file does not say the unit of level)".</summary>
    public string Told => FormattableString.Invariant($"{Count} could not be read ({Reasons})");

    /// <summary>What to do, as a sentence: the remedy of what is wrong with most of them.</summary>
    public string NextStep =>
        FormattableString.Invariant(
            $"Mend the {Count} that could not be read; no new sweeps are needed for that: {Commonest.Remedy}.");

    /// <summary>The same where the finding about these files tells the remedy.</summary>
    public string Mend => $"Mend the {Count} that could not be read, as files-unread says; no new sweeps are needed for that.";

    private string Count =>
        FormattableString.Invariant(
            $"{Files.Length} {Role.ToString().ToLowerInvariant()} {(Files.Length == 1 ? "file" : "files")}");

    private UnreadFile Commonest => Files.GroupBy(f => f.Reason).MaxBy(g => g.Count())!.First();

    private string Reasons
    {
        get
        {
            string[] reasons = [.. Files.GroupBy(f => f.Reason).OrderByDescending(g => g.Count()).Select(g => g.Key)];
            string named = string.Join("; ", reasons.Take(MostReasons));
            return reasons.Length > MostReasons
                ? FormattableString.Invariant($"{named}; {reasons.Length - MostReasons} other reasons") : named;
        }
    }
}
