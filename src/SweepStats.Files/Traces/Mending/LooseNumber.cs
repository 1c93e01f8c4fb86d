using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Mending;

/// <summary>Tells fields that a person takes for a number, in whichever way it is written, from words.</summary>
internal static class LooseNumber
{
    private const int Longest = 64;

    /// <summary>Whether a field is a number with decimal point or comma, with digits in groups, or with its unit.</summary>
    public static bool Is(ReadOnlySpan<byte> field) =>
        !field.IsEmpty && field.Length <= Longest && MayBegin(field[0])
        && (IsPlain(field) || GroupedNumber.Of(field) is not null
            || UnitWord.TryParseNumber(field, (byte)'.', out _, out _, out _)
            || UnitWord.TryParseNumber(field, (byte)',', out _, out _, out _));

    /// <summary>Whether a field is a number without groups and unit.</summary>
    public static bool IsPlain(ReadOnlySpan<byte> field) =>
        StrictNumber.TryParse(field, (byte)'.', 0, out _) || StrictNumber.TryParse(field, (byte)',', 0, out _);

    private static bool MayBegin(byte first) =>
        first is (>= (byte)'0' and <= (byte)'9') or (byte)'-' or (byte)'+' or (byte)'.' or (byte)',';
}
