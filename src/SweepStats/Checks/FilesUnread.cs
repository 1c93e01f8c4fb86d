using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Files that were taken could not be read and were left out: what they would have shown is not in any figure.</summary>
internal sealed class FilesUnread : ICheck
{
    /// <inheritdoc/>
    public string Code => "files-unread";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        foreach (SweepRole role in Enum.GetValues<SweepRole>())
        {
            if (UnreadFiles.Of(seen.Campaign.Unread, role) is { } unread)
            {
                yield return new Finding
                {
                    Code = Code,
                    Severity = Severity.Warning,
                    Role = role,
                    Message = $"{unread.Told}: what they hold is in no figure.",
                    Basis = string.Create(Amount.Print,
                        $"Left out on request (--keep-going); {InUse(seen, role)} {role.ToString().ToLowerInvariant()} sweeps "
                            + $"were read."),
                    NextStep = unread.NextStep,
                };
            }
        }
    }

    private static int InUse(Evidence seen, SweepRole role) =>
        seen.Campaign.Used().Count(s => s.Role == role) + seen.Campaign.SetAside.Count(s => s.Role == role);
}
