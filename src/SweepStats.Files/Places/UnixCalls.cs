using System.Runtime.InteropServices;
using System.Text;

namespace SweepStats.Files.Places;

/// <summary>The few calls of the system that .NET has no name for. Where a system lacks one, the answer is that it was not done.</summary>
internal static class UnixCalls
{
    private const string Library = "libc";
    private const int FromCurrentFolder = -100;
    private const uint Exchanging = 2;
    private const int WaitingExclusively = 2;
    private const int ReadOnly = 0;
    private const uint OwnerAndGroup = 0x18;
    private const uint Kind = 1;
    private const int StateSize = 256, OwnerAt = 20, GroupAt = 24, ModeAt = 28;
    private const int KindOfMode = 0xF000, RegularFile = 0x8000;

    /// <summary>Exchanges two folders in one step: at every instant each name stands for one of them.</summary>
    /// <returns>0 where it was done, else the system's number of the error; null where the system cannot.</returns>
    public static int? Exchange(string one, string other) => Asked(() =>
        renameat2(FromCurrentFolder, Bytes(one), FromCurrentFolder, Bytes(other), Exchanging) == 0 ? 0 : Marshal.GetLastPInvokeError());

    /// <summary>User and group that a folder belongs to; null where the system does not say.</summary>
    public static FolderOwner? OwnerOf(string folder)
    {
        byte[] state = new byte[StateSize];
        return Asked(() => statx(FromCurrentFolder, Bytes(folder), 0, OwnerAndGroup, state)) == 0
            ? new FolderOwner(BitConverter.ToUInt32(state, OwnerAt), BitConverter.ToUInt32(state, GroupAt))
            : null;
    }

    /// <summary>Whether a path leads to a file with content, and not to a pipe or a device, whose reading could wait for ever; null where the system does not say.</summary>
    public static bool? IsRegularFile(string path)
    {
        byte[] state = new byte[StateSize];
        return Asked(() => statx(FromCurrentFolder, Bytes(path), 0, Kind, state)) == 0 ? (BitConverter.ToUInt16(state, ModeAt) & KindOfMode) == RegularFile : null;
    }

    /// <summary>Gives a folder to a user and a group.</summary>
    public static bool Give(string folder, FolderOwner owner) => Asked(() => chown(Bytes(folder), owner.User, owner.Group)) == 0;

    /// <summary>Has the disk hold what a folder lists, so that its names outlive a power cut.</summary>
    public static void Flush(string folder) => OnFolder(folder, handle => fsync(handle));

    /// <summary>Waits until no other run holds a folder, and holds it until the answer is disposed; null where the system cannot.</summary>
    public static IDisposable? Hold(string folder)
    {
        int? handle = Asked(() => open(Bytes(folder), ReadOnly));
        if (handle is not >= 0)
        {
            return null;
        }

        _ = flock(handle.Value, WaitingExclusively);
        return new Held(handle.Value);
    }

    private static void OnFolder(string folder, Func<int, int> call)
    {
        if (Asked(() => open(Bytes(folder), ReadOnly)) is >= 0 and var handle)
        {
            _ = call(handle);
            _ = close(handle);
        }
    }

    private static int? Asked(Func<int> call)
    {
        if (OperatingSystem.IsWindows())
        {
            return null;
        }

        try
        {
            return call();
        }
        catch (Exception e) when (e is EntryPointNotFoundException or DllNotFoundException)
        {
            return null;
        }
    }

    private static byte[] Bytes(string path) => Encoding.UTF8.GetBytes(path + '\0');

    private sealed class Held(int handle) : IDisposable
    {
        public void Dispose() => _ = close(handle);
    }

#pragma warning disable IDE1006 // Named as the system names them.
    [DllImport(Library, SetLastError = true), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int renameat2(int oneFolder, byte[] one, int otherFolder, byte[] other, uint how);

    [DllImport(Library, SetLastError = true), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int statx(int folder, byte[] path, int how, uint asked, byte[] state);

    [DllImport(Library, SetLastError = true), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int chown(byte[] path, uint user, uint group);

    [DllImport(Library, SetLastError = true), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int open(byte[] path, int how);

    [DllImport(Library, SetLastError = true), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int fsync(int handle);

    [DllImport(Library, SetLastError = true), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int flock(int handle, int how);

    [DllImport(Library, SetLastError = true), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int close(int handle);
#pragma warning restore IDE1006
}
