using System.Text.RegularExpressions;

namespace SweepStats.Files.Places;

/// <summary>Why a file could not be written, without the hidden folder that nobody asked for.</summary>
internal static class WriteFault
{
    // ENOSPC and EDQUOT of Linux, EDQUOT of macOS; ERROR_DISK_FULL and ERROR_HANDLE_DISK_FULL of Windows.
    private static readonly int[] Full = [28, 122, 69, unchecked((int)0x80070070), unchecked((int)0x80070027)];

    // The quoted path of a hidden file, as the system's messages end with it.
    private static readonly Regex Hidden = new(@"[ :]*'[^']*\.[0-9a-f]{32}\.(part|lock)[^']*'", RegexOptions.CultureInvariant);

    /// <summary>An error that names the target and says what to do.</summary>
    /// <param name="e">What the system said.</param>
    /// <param name="shown">The target, as it was named.</param>
    /// <param name="what">What is written, such as "the report".</param>
    /// <param name="elsewhere">Where else to write it.</param>
    public static IOException Of(Exception e, string shown, string what, string elsewhere)
    {
        bool full = Full.Contains(e.HResult);
        string reason = full ? "the disk is full"
            : Hidden.Replace(e.Message.ReplaceLineEndings(" "), string.Empty).TrimEnd('.', ' ');
        return new IOException(
            $"{shown}: {what} cannot be written: {reason}; {(full ? $"make room, or {elsewhere}" : elsewhere)}", e);
    }
}
