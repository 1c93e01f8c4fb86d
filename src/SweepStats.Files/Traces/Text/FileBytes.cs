using System.Buffers;
using SweepStats.Files.Places;

namespace SweepStats.Files.Traces.Text;

/// <summary>The bytes of a file in a pooled buffer, brought to UTF-8. The buffer belongs to the taker.</summary>
/// <param name="Buffer">Pooled buffer.</param>
/// <param name="Start">First byte after a byte order mark.</param>
/// <param name="End">One past the last byte.</param>
/// <param name="Sha256">Hash of the bytes as they are on disk.</param>
/// <param name="Assumption">What was taken for granted in decoding.</param>
internal readonly record struct FileBytes(byte[] Buffer, int Start, int End, string Sha256, string? Assumption)
{
    /// <summary>The text.</summary>
    public ReadOnlySpan<byte> Text => Buffer.AsSpan(Start, End - Start);

    /// <summary>Longest file that is read: a trace of a thousand columns and ten thousand points stays below it.</summary>
    private const long LongestFile = 1L << 30;

    /// <summary>Reads a file.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="faults">Takes the reason where it cannot be read.</param>
    /// <param name="ifEmpty">What to do about an empty file.</param>
    public static FileBytes? Read(string path, FaultList faults, string ifEmpty = "export the sweep again, to a file on disk")
    {
        if (!IsReadable(path, ifEmpty, faults))
        {
            return null;
        }

        try
        {
            using var handle = File.OpenHandle(path);
            long length = RandomAccess.GetLength(handle);
            byte[] buffer = ArrayPool<byte>.Shared.Rent((int)length);
            int got = 0;
            while (got < length && RandomAccess.Read(handle, buffer.AsSpan(got, (int)length - got), got) is > 0 and var more)
            {
                got += more;
            }

            return TextDecoder.Decode(buffer, got);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            faults.Add(null, "the file cannot be opened: " + e.Message.TrimEnd('.'), "check that it exists and may be read");
            return null;
        }
    }

    /// <summary>The same for content that is already in memory, which is copied.</summary>
    public static FileBytes Of(ReadOnlySpan<byte> content)
    {
        byte[] buffer = ArrayPool<byte>.Shared.Rent(content.Length);
        content.CopyTo(buffer);
        return TextDecoder.Decode(buffer, content.Length);
    }

    // A pipe or a device has no length either, and opening it could wait for ever: it is turned away unopened.
    private static bool IsReadable(string path, string ifEmpty, FaultList faults)
    {
        var info = new FileInfo(path);
        if (LostLink.CircleAt(info) is { } circle)
        {
            faults.Add(null, circle, "name the file itself, or mend the link");
            return false;
        }

        bool isLink = info.Attributes.HasFlag(FileAttributes.ReparsePoint) && info.LinkTarget is not null;
        FileSystemInfo target = isLink ? info.ResolveLinkTarget(returnFinalTarget: true) ?? info : info;
        if (!(isLink ? File.Exists(path) : info.Exists) || target is not FileInfo file
            || (file.Attributes & (FileAttributes.Device | FileAttributes.Directory)) != 0)
        {
            faults.Add(null, "there is no such file", "check the spelling of the path");
            return false;
        }

        if (file.Length == 0)
        {
            faults.Add(null, "the file is empty, or is not a regular file", ifEmpty);
            return false;
        }

        if (file.Length > LongestFile)
        {
            faults.Add(null, "the file is larger than 1 GiB", "export fewer traces or points a file");
            return false;
        }

        return true;
    }
}
