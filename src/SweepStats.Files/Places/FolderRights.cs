namespace SweepStats.Files.Places;

/// <summary>Owner, group and mode of a folder, which its successor is to have too.</summary>
internal static class FolderRights
{
    /// <summary>Gives a folder the rights of another.</summary>
    /// <returns>Whether it has them now; false where only the system's administrator may give a folder to its owner.</returns>
    public static bool Carry(string from, string to)
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
        File.SetUnixFileMode(to, File.GetUnixFileMode(from));
        return true;
    }
}
