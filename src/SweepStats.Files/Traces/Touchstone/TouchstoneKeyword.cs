using System.Text;

namespace SweepStats.Files.Traces.Touchstone;

/// <summary>A keyword line of version 2, such as <c>[Number of Ports] 2</c>.</summary>
/// <param name="Name">The keyword in lower case and without blanks: writers differ in both.</param>
/// <param name="Shown">The keyword as the file has it, in its brackets.</param>
/// <param name="Values">The words behind it.</param>
internal sealed record TouchstoneKeyword(string Name, string Shown, string[] Values)
{
    /// <summary>Understands a line that begins with a bracket; null where the bracket is not closed.</summary>
    public static TouchstoneKeyword? Parse(ReadOnlySpan<byte> bare)
    {
        int end = bare.IndexOf((byte)']');
        if (end < 0)
        {
            return null;
        }

        string[] words = TouchstoneLine.Words(bare[1..end]);
        return new TouchstoneKeyword(string.Concat(words).ToLowerInvariant(),
            $"[{Encoding.UTF8.GetString(bare[1..Math.Min(end, 60)]).Trim()}]", TouchstoneLine.Words(bare[(end + 1)..]));
    }
}
