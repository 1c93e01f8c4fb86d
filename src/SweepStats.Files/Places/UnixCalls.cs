using System.Runtime.InteropServices;
using System.Text;

namespace SweepStats.Files.Places;

/// <summary>
/// The few calls of the system that .NET has no name for. Where a system lacks one, the answer is that it was not done.
/// </summary>
internal static class UnixCalls
{
    private const string Library = "libc";
    private const int FromCurrentFolder = -100;
    private const uint Exchanging = 2;
    private const int Exclusively = 2, WithoutWaiting = 4;
    private const int Interrupted = 4;
    private const int ReadOnly = 0;
    private const uint OwnerAndGroup = 0x18;
    private const uint Kind = 1;
    private const int StateSize = 256, OwnerAt = 20, GroupAt = 24, ModeAt = 28;
    private const int KindOfMode = 0xF000, RegularFile = 0x8000;

    // O_CLOEXEC: a browser that prints must not inherit it.
    private static readonly int ForThisProgram = OperatingSystem.IsMacOS() ? 0x1000000 : 0x80000;

    // EWOULDBLOCK of Linux and of macOS.
    private static readonly int[] WouldWait = [11, 35];

    /// <summary>Exchanges two folders in one step: at every instant each name stands for one of them.</summary>
    /// <returns>0 where it was done, else the system's number of the error; null where the system cannot.</returns>
    public static int? Exchange(string one, string other) =>
        Asked(() => Error(renameat2(FromCurrentFolder, Bytes(one), FromCurrentFolder, Bytes(other), Exchanging)))
        ?? ExchangeByNumber(one, other);

    /// <summary>The same by the number of the call, which the library of some Linux systems (musl) has no name for.</summary>
    public static int? ExchangeByNumber(string one, string other) => NumberOfExchange is { } number
        ? Asked(() => Error(syscall(number, FromCurrentFolder, Bytes(one), FromCurrentFolder, Bytes(other), Exchanging)))
        : null;

    /// <summary>User and group that a folder belongs to; null where the system does not say.</summary>
    public static FolderOwner? OwnerOf(string folder)
    {
        byte[] state = new byte[StateSize];
        return Asked(() => statx(FromCurrentFolder, Bytes(folder), 0, OwnerAndGroup, state)) == 0
            ? new FolderOwner(BitConverter.ToUInt32(state, OwnerAt), BitConverter.ToUInt32(state, GroupAt))
            : null;
    }

    /// <summary>
    /// Whether a path leads to a file with content, and not to a pipe or a device, whose reading could wait for ever; null where
    /// the system does not say.
    /// </summary>
    public static bool? IsRegularFile(string path)
    {
        byte[] state = new byte[StateSize];
        return Asked(() => statx(FromCurrentFolder, Bytes(path), 0, Kind, state)) == 0
            ? (BitConverter.ToUInt16(state, ModeAt) & KindOfMode) == RegularFile : null;
    }

    /// <summary>Gives a folder to a user and a group.</summary>
    public static bool Give(string folder, FolderOwner owner) => Asked(() => chown(Bytes(folder), owner.User, owner.Group)) == 0;

    /// <summary>Has the disk hold what a folder lists, so that its names outlive a power cut.</summary>
    public static void Flush(string folder)
    {
        using FolderHandle? opened = Open(folder);
        _ = opened is null ? 0 : fsync(opened.Number);
    }

    /// <summary>Opens a folder, for this program alone; null where the system does not.</summary>
    public static FolderHandle? Open(string folder) =>
        Asked(() => open(Bytes(folder), ReadOnly | ForThisProgram)) is >= 0 and var handle ? new FolderHandle(handle) : null;

    /// <summary>Holds a folder as long as it is open, unless another run does; null where the system cannot tell.</summary>
    public static bool? TryHold(FolderHandle folder) => Held(() => flock(folder.Number, WithoutWaiting | Exclusively));

    /// <summary>
    /// What a call to hold something comes to: one that was interrupted says nothing of other runs, and is made again.
    /// </summary>
    internal static bool? Held(Func<int> call)
    {
        int error = Interrupted;
        while (error == Interrupted)
        {
            if (call() == 0)
            {
                return true;
            }

            error = Marshal.GetLastPInvokeError();
        }

        return WouldWait.Contains(error) ? false : null;
    }

    private static nint? NumberOfExchange => !OperatingSystem.IsLinux() ? null : RuntimeInformation.ProcessArchitecture switch
    {
        Architecture.X64 => 316,
        Architecture.Arm64 => 276,
        _ => null,
    };

    private static int Error(nint answer) => answer == 0 ? 0 : Marshal.GetLastPInvokeError();

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

    /// <summary>A folder that is open.</summary>
    /// <param name="number">How the system numbers it.</param>
    internal sealed class FolderHandle(int number) : IDisposable
    {
        private int _number = number;

        /// <summary>How the system numbers it.</summary>
        public int Number => _number;

        /// <summary>Closes the folder, once however often it is called.</summary>
        public void Dispose()
        {
            if (Interlocked.Exchange(ref _number, -1) is >= 0 and var open)
            {
                _ = close(open);
            }
        }
    }

#pragma warning disable IDE1006 // Named as the system names them.
    [DllImport(Library, SetLastError = true), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int renameat2(int oneFolder, byte[] one, int otherFolder, byte[] other, uint how);

    [DllImport(Library, SetLastError = true), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern nint syscall(nint number, nint oneFolder, byte[] one, nint otherFolder, byte[] other, nuint how);

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
