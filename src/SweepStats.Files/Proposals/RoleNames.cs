using SweepStats.Files.Campaigns;
using SweepStats.Sweeps;

namespace SweepStats.Files.Proposals;

/// <summary>Guesses the role of a sweep from names alone: the column's before the file's, the file's before the
/// folders'.</summary>
internal static class RoleNames
{
    /// <summary>The guess; without role and reason empty where no word tells any.</summary>
    public static RoleGuess Of(SweepCandidate sweep)
    {
        NamePart[] telling = [.. sweep.NearestFirst.Where(p => !p.Roles.IsEmpty)];
        if (telling.Length == 0)
        {
            return new RoleGuess(null, "");
        }

        if (telling[0].Role is not { } role)
        {
            return new RoleGuess(null, $"'{telling[0].RoleText}' in one name say different roles");
        }

        NamePart? other = telling.Skip(1).FirstOrDefault(p => p.Role != role && !MayHold(p, role));
        return other is null
            ? new RoleGuess(role, $"'{telling[0].RoleText}' in the {Kind(sweep, telling[0])}'s name")
            : new RoleGuess(null,
                $"'{telling[0].RoleText}' says {role.Name()}, and '{other.RoleText}' in the folder's name says another role");
    }

    // A folder of a specimen may hold the floor and the reference that were taken with it.
    private static bool MayHold(NamePart folder, SweepRole role) =>
        folder.Role == SweepRole.Covered && role != SweepRole.Covered
            && !folder.Text.Equals("covered", StringComparison.OrdinalIgnoreCase);

    private static string Kind(SweepCandidate sweep, NamePart part) =>
        ReferenceEquals(part, sweep.Header) ? "column" : ReferenceEquals(part, sweep.Name) ? "file" : "folder";
}
