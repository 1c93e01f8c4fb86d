namespace SweepStats.Files.Places;

/// <summary>
/// What killed runs left beside a target. Nothing is touched that belongs to a run that is alive, or that is not named as ours.
/// </summary>
/// <param name="place">The folder they lie in.</param>
/// <param name="name">How they are named.</param>
internal sealed class Leftovers(string place, HiddenName name)
{
    /// <summary>Puts back what a run was killed over exchanging, and removes the rest.</summary>
    /// <param name="target">The target.</param>
    /// <param name="own">The run that asks; its lock says whether locks are seen here.</param>
    /// <param name="predecessor">How an earlier folder goes.</param>
    public void Sweep(string target, RunLock own, Predecessor predecessor)
    {
        if (!own.IsSeen)
        {
            return;
        }

        foreach (string run in Runs().Where(run => run != own.Run))
        {
            try
            {
                Sweep(run, target, predecessor);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                // Another run sweeps it at the same time, or it is not ours to remove; the report does not depend on it.
            }
        }
    }

    private string[] Runs() => [.. Directory.EnumerateFileSystemEntries(place).Select(path => name.RunOf(Path.GetFileName(path)))
        .OfType<string>().Distinct()];

    private void Sweep(string run, string target, Predecessor predecessor)
    {
        // A run takes its lock first and lets go of it last: without one it is dead.
        using RunLock? dead = RunLock.OfDead(place, name, run);
        if (dead is null && File.Exists(Path.Combine(place, name.Of(run, HiddenName.Lock))))
        {
            return;
        }

        string old = Path.Combine(place, name.Of(run, HiddenName.Old)), part = Path.Combine(place, name.Of(run, HiddenName.Part));
        if (Directory.Exists(old) && !Path.Exists(target))
        {
            Directory.Move(old, target);
        }

        if (File.Exists(part))
        {
            File.Delete(part);
        }

        Remove(old, target, predecessor);
        Remove(part, target, predecessor);
    }

    private static void Remove(string folder, string target, Predecessor predecessor)
    {
        if (!Directory.Exists(folder))
        {
            return;
        }

        // A folder with its mark may be an earlier one, into which somebody has put a file; without, it was never whole.
        if (predecessor.Mark is { } mark && File.Exists(Path.Combine(folder, mark)) && predecessor.Own(folder).Contains(mark))
        {
            // Without its mark the next run would take it for a folder that was never whole.
            _ = predecessor.Remove(folder, target) ? folder : KeptFolder.Of(folder, target);
        }
        else
        {
            FolderRights.MakeWorkable(folder);
            Directory.Delete(folder, recursive: true);
        }
    }
}
