namespace SweepStats.Files.Places;

/// <summary>Folders that a run made on the way to its target, so that it can take them away again.</summary>
internal sealed class MadeFolders
{
    private readonly List<string> _made = [];

    /// <summary>Makes a folder and those above it that are missing.</summary>
    public void Make(string folder)
    {
        var missing = new Stack<string>();
        for (string? path = Path.GetFullPath(folder); path is not null && !Directory.Exists(path); path =
            Path.GetDirectoryName(path))
        {
            missing.Push(path);
        }

        while (missing.TryPop(out string? path))
        {
            Directory.CreateDirectory(path);
            _made.Add(path);
        }
    }

    /// <summary>Removes those that are still empty.</summary>
    public void Undo()
    {
        foreach (string folder in Enumerable.Reverse(_made))
        {
            if (Directory.Exists(folder) && !Directory.EnumerateFileSystemEntries(folder).Any())
            {
                Directory.Delete(folder);
            }
        }

        _made.Clear();
    }
}
