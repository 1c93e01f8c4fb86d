namespace SweepStats.Storage;

/// <summary>What does not fit into memory can be written to no temporary file, or not read from it.</summary>
public sealed class ScratchFileException : IOException
{
    private ScratchFileException(string message, Exception because)
        : base($"{message} The system says: {because.Message}", because)
    {
    }

    internal static ScratchFileException NoRoom(string folder, Exception because) => new(
        $"This campaign needs room for temporary files, and {folder} gives none: free some, or name another folder by "
            + "TMPDIR (TEMP on Windows).", because);

    internal static ScratchFileException NotRead(string folder, Exception because) => new(
        $"Run the command once more: its temporary file in {folder} can no longer be read.", because);
}
