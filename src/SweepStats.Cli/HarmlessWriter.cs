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

    public override Encoding Encoding => to.Encoding;

    /// <summary>The same text without it.</summary>
    public static string Text(string text) =>
        text.AsSpan().ContainsAny(Steering) ? string.Concat(text.Select(c => Steering.Contains(c) ? ' ' : c)) : text;

    public override void Write(char value) => to.Write(Steering.Contains(value) ? ' ' : value);

    public override void Write(string? value) => Write(value.AsSpan());

    public override void Write(char[] buffer, int index, int count) => Write(buffer.AsSpan(index, count));

    public override void Write(ReadOnlySpan<char> buffer) => to.Write(Text(buffer.ToString()));

    public override void WriteLine(string? value)
    {
        Write(value);
        to.WriteLine();
    }

    public override void Flush() => to.Flush();
}
