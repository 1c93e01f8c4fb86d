namespace SweepStats.Storage;

/// <summary>The folder for temporary files has no room for what does not fit into memory.</summary>
public sealed class NoRoomException : IOException
{
    internal NoRoomException(string folder, Exception because)
        : base($"This campaign needs room for temporary files, and {folder} gives none: free some, or name another folder by "
            + $"TMPDIR (TEMP on Windows). The system says: {because.Message}", because)
    {
    }
}
