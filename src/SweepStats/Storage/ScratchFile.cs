using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace SweepStats.Storage;

/// <summary>A file for the life of the program, in the folder for temporary files. May be used from many threads.</summary>
/// <remarks>
/// Where the system can do without a name it loses it as soon as it is open, so that nothing is left of it however the program
/// ends; elsewhere the system takes it away with the program.
/// </remarks>
internal sealed class ScratchFile
{
    private readonly SafeFileHandle _handle;
    private readonly string _folder;
    private long _end;

    private ScratchFile(SafeFileHandle handle, string folder)
    {
        (_handle, _folder) = (handle, folder);
    }

    /// <param name="folder">The folder for temporary files.</param>
    /// <exception cref="ScratchFileException">It cannot be written to.</exception>
    public static ScratchFile In(string folder)
    {
        string path = Path.Combine(folder, $"sweepstats-{Guid.NewGuid():N}");
        try
        {
            bool keepsName = OperatingSystem.IsWindows();
            SafeFileHandle handle = File.OpenHandle(path, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None,
                keepsName ? FileOptions.DeleteOnClose : FileOptions.None);
            if (!keepsName)
            {
                File.Delete(path);
            }

            return new ScratchFile(handle, folder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw ScratchFileException.NoRoom(folder, e);
        }
    }

    /// <summary>Writes rows one behind the other.</summary>
    /// <returns>Where the first begins.</returns>
    /// <exception cref="ScratchFileException">There is no room left.</exception>
    public long Add(double[][] rows)
    {
        long bytes = rows.Sum(r => (long)r.Length) * sizeof(double);
        long at = Interlocked.Add(ref _end, bytes) - bytes, next = at;
        try
        {
            foreach (double[] row in rows)
            {
                RandomAccess.Write(_handle, MemoryMarshal.AsBytes<double>(row), next);
                next += row.Length * (long)sizeof(double);
            }
        }
        catch (Exception e) when (IsOfFile(e))
        {
            throw ScratchFileException.NoRoom(_folder, e);
        }

        return at;
    }

    /// <summary>Reads numbers side by side.</summary>
    /// <param name="at">Where the first begins.</param>
    /// <param name="values">Room for them.</param>
    /// <exception cref="ScratchFileException">The file can no longer be read.</exception>
    public void Read(long at, Span<double> values)
    {
        try
        {
            ReadAll(MemoryMarshal.AsBytes(values), at);
        }
        catch (Exception e) when (IsOfFile(e))
        {
            throw ScratchFileException.NotRead(_folder, e);
        }
    }

    private void ReadAll(Span<byte> rest, long at)
    {
        while (!rest.IsEmpty)
        {
            int read = RandomAccess.Read(_handle, rest, at);
            if (read == 0)
            {
                throw new EndOfStreamException("the file ended early.");
            }

            rest = rest[read..];
            at += read;
        }
    }

    // A limit of the system on the length of a file comes as a wrong argument.
    private static bool IsOfFile(Exception e) => e is IOException or UnauthorizedAccessException or ArgumentOutOfRangeException;
}
