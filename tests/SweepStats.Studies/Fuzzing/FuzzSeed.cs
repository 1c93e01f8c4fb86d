using System.Text;

namespace SweepStats.Studies.Fuzzing;

/// <summary>A file that mutations start from.</summary>
internal sealed record FuzzSeed(string Name, byte[] Content)
{
    /// <summary>A seed of UTF-8 text; its lines end as the text has them.</summary>
    public static FuzzSeed Of(string name, string text) => new(name, Encoding.UTF8.GetBytes(text));

    /// <summary>A seed in another encoding, with its byte order mark where it has one.</summary>
    public static FuzzSeed Of(string name, string text, Encoding encoding) =>
        new(name, [.. encoding.GetPreamble(), .. encoding.GetBytes(text)]);
}
