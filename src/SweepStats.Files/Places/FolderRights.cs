namespace SweepStats.Files.Places;

/// <summary>Owner, group and mode of a folder, which its successor is to have too.</summary>
internal static class FolderRights
{
    private const UnixFileMode Workable = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    /// <summary>Gives a folder the rights of another.</summary>
    /// <returns>Whether it has them now; false where only the system's administrator may give a folder to its owner.</returns>
    public static bool Carry(string from, string to) => Carry(from, to, UnixFileMode.None);

    /// <summary>The same, but its owner may work in it, whatever the other forbids: it has still to be filled.</summary>
    public static bool CarryWorkable(string from, string to) => Carry(from, to, Workable);

    /// <summary>Lets its owner take away what lies in a folder.</summary>
    public static void MakeWorkable(string folder)
    {
        if (OperatingSystem.IsWindows() || !Directory.Exists(folder))
        {
            return;
        }

        UnixFileMode mode = File.GetUnixFileMode(folder);
        if ((mode & Workable) != Workable)
        {
            File.SetUnixFileMode(folder, mode | Workable);
        }
    }

    private static bool Carry(string from, string to, UnixFileMode besides)
    {
        if (OperatingSystem.IsWindows())
        {
            return true;
        }

        FolderOwner? owner = UnixCalls.OwnerOf(from);
        if (owner is { } given && UnixCalls.OwnerOf(to) != given && !UnixCalls.Give(to, given))
        {
            return false;
        }

        // After the owner: a change of owner may take marks of the mode away.
        File.SetUnixFileMode(to, File.GetUnixFileMode(from) | besides);
        return true;
    }
}
