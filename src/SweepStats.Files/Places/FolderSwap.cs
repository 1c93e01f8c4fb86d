namespace SweepStats.Files.Places;

/// <summary>Puts a gathered folder at its target in place of what stands there.</summary>
/// <param name="stage">The gathered folder.</param>
/// <param name="target">Where it is to stand.</param>
/// <param name="predecessor">What may stand there.</param>
internal sealed class FolderSwap(string stage, string target, Predecessor predecessor)
{
    private const int MostTries = 10;
    private const int MountedOrBusy = 16;
    private static readonly int[] NotThere = [2, 20];
    private static readonly int[] Unable = [22, 38, 45, 95];

    /// <summary>Where lies what stood at the target before; null where nothing did.</summary>
    public string? Replaced { get; private set; }

    /// <summary>Exchanges both in one step, or in two where the system has none.</summary>
    /// <param name="done">Called at once when the gathered folder stands at the target.</param>
    public void InOneStep(Action done)
    {
        for (int tries = 1; ; tries++)
        {
            try
            {
                if (MovedIn() || Exchanged())
                {
                    done();
                    return;
                }
            }
            catch (IOException e) when (e is not RefusedException && tries < MostTries)
            {
                // Another run put its report there between the question and the step.
            }

            if (tries == MostTries)
            {
                throw new IOException($"'{target}' changes all the time");
            }
        }
    }

    /// <summary>Replaces the files one by one, the mark last, while no other run does.</summary>
    /// <remarks>A run that is killed meanwhile leaves the list of both for the next one.</remarks>
    public void FileByFile()
    {
        RefuseForeign();
        string[] files =
            [.. Directory.EnumerateFiles(stage, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(stage, f))];
        string[] gone = [.. predecessor.Own(target).Except(files.Select(f => f.Replace('\\', '/')))];
        foreach (string file in files.OrderBy(f => f == predecessor.Mark))
        {
            if (file == predecessor.Mark)
            {
                Remove(gone);
            }

            string to = Path.Combine(target, file);
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Move(Path.Combine(stage, file), to, overwrite: true);
        }

        UnixCalls.Flush(target);
    }

    private void Remove(string[] files)
    {
        foreach (string file in files)
        {
            File.Delete(Path.Combine(target, file));
        }

        foreach (string folder in files.Select(f => Path.GetDirectoryName(f)!).Where(f => f.Length > 0).Distinct()
            .Select(f => Path.Combine(target, f)))
        {
            if (Directory.Exists(folder) && !Directory.EnumerateFileSystemEntries(folder).Any())
            {
                Directory.Delete(folder);
            }
        }
    }

    private bool MovedIn()
    {
        if (Path.Exists(target))
        {
            return false;
        }

        Directory.Move(stage, target);
        return true;
    }

    private bool Exchanged()
    {
        RefuseForeign();
        if (!FolderRights.Carry(target, stage))
        {
            throw new IOException($"'{target}' was given to somebody else meanwhile");
        }

        int? error = UnixCalls.Exchange(stage, target);
        if (error is null || Unable.Contains(error.Value))
        {
            InTwoSteps();
            return true;
        }

        if (error == 0)
        {
            Replaced = stage;
            return true;
        }

        return NotThere.Contains(error.Value) ? false : throw new IOException(error == MountedOrBusy ? $"'{target}' is in use"
            : $"'{target}' cannot be exchanged (error {error})");
    }

    private void InTwoSteps()
    {
        string old = Path.ChangeExtension(stage, HiddenName.Old);
        Directory.Move(target, old);
        try
        {
            Directory.Move(stage, target);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Directory.Move(old, target);
            throw;
        }

        Replaced = old;
    }

    // The run took its time: somebody may have put a file there meanwhile.
    private void RefuseForeign()
    {
        if (predecessor.Objection(target) is { } fault)
        {
            throw new RefusedException(fault.ToString());
        }
    }
}
