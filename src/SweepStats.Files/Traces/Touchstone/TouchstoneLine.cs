using System.Text;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Touchstone;

/// <summary>Lines of a Touchstone file.</summary>
internal static class TouchstoneLine
{
    private const int LongestShown = 40;

    /// <summary>How numbers are parted and written.</summary>
    public static readonly Separator Blanks = new((byte)' ', (byte)'.');

    /// <summary>
    /// A line without its comment and the blanks around it, among them the mark that old systems put at the end of a text.
    /// </summary>
    public static ReadOnlySpan<byte> Bare(ReadOnlySpan<byte> line)
    {
        int comment = line.IndexOf((byte)'!');
        return (comment < 0 ? line : line[..comment]).Trim(" \t\u001a"u8);
    }

    /// <summary>The words of a line without its comment.</summary>
    public static string[] Words(ReadOnlySpan<byte> bare) => Words(Encoding.UTF8.GetString(bare));

    /// <summary>The words of a text.</summary>
    public static string[] Words(string text) => text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);

    /// <summary>A field as messages show it.</summary>
    public static string Shown(ReadOnlySpan<byte> field) =>
        Encoding.UTF8.GetString(field[..Math.Min(field.Length, LongestShown)]);

    /// <summary>Numbers in a line, none where any field is not a number.</summary>
    public static int Numbers(ReadOnlySpan<byte> bare)
    {
        int numbers = 0;
        var reader = new FieldReader(bare, Blanks);
        while (reader.Next(out ReadOnlySpan<byte> field))
        {
            if (!StrictNumber.TryParse(field, Blanks.DecimalMark, 0, out _))
            {
                return 0;
            }

            numbers++;
        }

        return numbers;
    }
}
