namespace SweepStats.Sweeps;

/// <summary>
/// Ordinal order of names and paths in which runs of digits count as numbers: s2 comes before s10. The same in every language.
/// </summary>
public sealed class NaturalOrder : IComparer<string>
{
    private NaturalOrder()
    {
    }

    /// <summary>The one there is.</summary>
    public static NaturalOrder Instance { get; } = new();

    /// <inheritdoc/>
    public int Compare(string? x, string? y)
    {
        int same = Alike(x, y);
        ReadOnlySpan<char> a = x.AsSpan(same);
        ReadOnlySpan<char> b = y.AsSpan(same);
        while (!a.IsEmpty && !b.IsEmpty)
        {
            (int digitsA, int digitsB) = (Digits(a), Digits(b));
            int order = digitsA > 0 && digitsB > 0 ? Numbers(a[..digitsA], b[..digitsB]) : a[0].CompareTo(b[0]);
            if (order != 0)
            {
                return order;
            }

            a = a[Math.Max(1, digitsA)..];
            b = b[Math.Max(1, digitsB)..];
        }

        // Equal but for leading zeros: the plain order keeps the outcome definite.
        int rest = a.Length.CompareTo(b.Length);
        return rest != 0 ? rest : string.CompareOrdinal(x, y);
    }

    // How much at the start is the same in both; not the first digits of a number that goes on differently.
    private static int Alike(ReadOnlySpan<char> a, ReadOnlySpan<char> b)
    {
        int same = a.CommonPrefixLength(b);
        while (same > 0 && char.IsAsciiDigit(a[same - 1]))
        {
            same--;
        }

        return same;
    }

    private static int Digits(ReadOnlySpan<char> text)
    {
        int length = text.IndexOfAnyExceptInRange('0', '9');
        return length < 0 ? text.Length : length;
    }

    private static int Numbers(ReadOnlySpan<char> a, ReadOnlySpan<char> b)
    {
        a = a.TrimStart('0');
        b = b.TrimStart('0');
        return a.Length != b.Length ? a.Length.CompareTo(b.Length) : a.SequenceCompareTo(b);
    }
}
