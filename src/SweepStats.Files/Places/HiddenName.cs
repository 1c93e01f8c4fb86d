using System.Buffers;
using System.Security.Cryptography;
using System.Text;

namespace SweepStats.Files.Places;

/// <summary>Names of what a run keeps beside its target until it is done: <c>.target.number-of-the-run.part</c>.</summary>
/// <param name="target">Name of the target.</param>
internal sealed class HiddenName(string target)
{
    /// <summary>What is gathered; after an exchange in one step, what stood at the target before.</summary>
    public const string Part = ".part";

    /// <summary>What stood at the target before, where a system exchanges in two steps.</summary>
    public const string Old = ".old";

    /// <summary>Held as long as the run lives.</summary>
    public const string Lock = ".lock";

    private static readonly SearchValues<char> Digits = SearchValues.Create("0123456789abcdef");

    private const int LengthOfRun = 32;

    // With the number of the run and the end it must stay within the 255 bytes that a name has.
    private const int MostBytes = 200;

    private readonly string _start = $".{Label(target)}.";

    /// <summary>A run of its own.</summary>
    public static string NewRun() => Guid.NewGuid().ToString("N");

    /// <summary>The hidden name that a run uses.</summary>
    public string Of(string run, string end) => _start + run + end;

    /// <summary>The run that a hidden name of this target belongs to; null for any other name.</summary>
    public string? RunOf(string name) =>
        name.StartsWith(_start, StringComparison.Ordinal) && EndsAsOurs(name.AsSpan(_start.Length))
        ? name.Substring(_start.Length, LengthOfRun) : null;

    /// <summary>Whether a name is that of something a run keeps, for whatever target.</summary>
    public static bool IsOurs(string name)
    {
        string end = Path.GetExtension(name);
        ReadOnlySpan<char> start = name.AsSpan()[..^end.Length];
        return end is Part or Old or Lock && start.Length > LengthOfRun + 1 && start[0] == '.' && start[^(LengthOfRun + 1)] == '.'
            && IsRun(start[^LengthOfRun..]);
    }

    private static bool EndsAsOurs(ReadOnlySpan<char> rest) =>
        rest.Length > LengthOfRun && IsRun(rest[..LengthOfRun]) && rest[LengthOfRun..] is Part or Old or Lock;

    private static bool IsRun(ReadOnlySpan<char> text) => !text.ContainsAnyExcept(Digits);

    private static string Label(string target) => Encoding.UTF8.GetByteCount(target) <= MostBytes
        ? target : Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(target)));
}
