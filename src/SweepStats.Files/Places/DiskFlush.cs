namespace SweepStats.Files.Places;

/// <summary>
/// Has the disk hold the files of a folder before they are put in their place: after a power cut an empty file must not stand
/// where a full one did.
/// </summary>
internal static class DiskFlush
{
    // Waiting for the disk takes no processor time; it joins what it is asked for at once.
    private const int AtOnce = 16;

    /// <summary>Returns once the disk holds all files under the folder and, where the system can, its folders.</summary>
    public static void Of(string folder)
    {
        Parallel.ForEach(Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories),
            new ParallelOptions { MaxDegreeOfParallelism = AtOnce }, OfFile);
        foreach (string inner in Directory.EnumerateDirectories(folder, "*", SearchOption.AllDirectories))
        {
            UnixCalls.Flush(inner);
        }

        UnixCalls.Flush(folder);
    }

    /// <summary>Returns once the disk holds a file; the file has to be writable.</summary>
    public static void OfFile(string file)
    {
        using Microsoft.Win32.SafeHandles.SafeFileHandle handle = File.OpenHandle(file, FileMode.Open, FileAccess.ReadWrite);
        RandomAccess.FlushToDisk(handle);
    }
}
