using System.Buffers;
using System.Text;

namespace SweepStats.Cli;

/// <summary>
/// Hands text on without what would steer a terminal: names of files and folders may hold escape sequences, whoever prints them.
/// </summary>
/// <param name="to">Where to.</param>
internal sealed class HarmlessWriter(TextWriter to) : TextWriter
{
    private static readonly SearchValues<char> Steering =
        SearchValues.Create(
            [.. Enumerable.Range(0, 0xA0).Select(c => (char)c).Where(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t'))]);

    /// <inheritdoc/>
    public override Encoding Encoding => to.Encoding;

    /// <summary>The same text without it.</summary>
    public static string Text(string text) =>
        text.AsSpan().ContainsAny(Steering) ? string.Concat(text.Select(c => Steering.Contains(c) ? ' ' : c)) : text;

    /// <summary>Hands a character on; a blank stands in for one that would steer.</summary>
    public override void Write(char value) => to.Write(Steering.Contains(value) ? ' ' : value);

    /// <inheritdoc/>
    public override void Write(string? value) => Write(value.AsSpan());

    /// <inheritdoc/>
    public override void Write(char[] buffer, int index, int count) => Write(buffer.AsSpan(index, count));

    /// <summary>Hands text on; a blank stands in for each character that would steer.</summary>
    public override void Write(ReadOnlySpan<char> buffer) => to.Write(Text(buffer.ToString()));

    /// <inheritdoc/>
    public override void WriteLine(string? value)
    {
        Write(value);
        to.WriteLine();
    }

    /// <inheritdoc/>
    public override void Flush() => to.Flush();
}
