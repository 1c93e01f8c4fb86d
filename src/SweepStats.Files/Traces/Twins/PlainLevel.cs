using System.Runtime.CompilerServices;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Twins;

/// <summary>
/// A level as most files write it: a plain number with a decimal point, or below 0. A whole number above 0 behind a comma may be
/// the decimals of the one before.
/// </summary>
internal static class PlainLevel
{
    /// <summary>Reads the level at the start of a text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="level">The level.</param>
    /// <returns>How many characters it has; 0 where the text begins with no such level.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int Read(ReadOnlySpan<byte> text, out double level)
    {
        int length = PlainNumber.Read(text, (byte)'.', out level);
        return length > 0 && (text[0] == (byte)'-' || text[..length].Contains((byte)'.')) ? length : 0;
    }
}
