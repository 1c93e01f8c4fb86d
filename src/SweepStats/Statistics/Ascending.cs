namespace SweepStats.Statistics;

/// <summary>
/// Puts numbers in ascending order, or finds the one that has a place in it, without asking a comparer for each pair.
/// </summary>
/// <remarks>
/// Many are dealt out by eleven bits of their representation at a time, lowest first, so the cost grows with the count alone; few
/// are inserted one by one. All numbers but NaN have a place; −0 stands before 0. Source: Knuth 1998, The Art of Computer
/// Programming 3, 5.2.1, 5.2.5 and 5.2.2 (from memory).
/// </remarks>
internal static class Ascending
{
    private const int Few = 32;
    private const int Digit = 11;
    private const int Digits = 6;
    private const int Piles = 1 << Digit;
    private const ulong Sign = 1ul << 63;

    // Parting halves what is left more often than not; values laid out against it are put in order instead.
    private const int MostPartings = 64;

    /// <summary>Puts all in order.</summary>
    public static void Sort(Span<double> values)
    {
        if (values.Length <= Few)
        {
            Insert(values);
            return;
        }

        var keys = new ulong[values.Length];
        for (int i = 0; i < keys.Length; i++)
        {
            keys[i] = Key(values[i]);
        }

        keys = Dealt(keys);
        for (int i = 0; i < keys.Length; i++)
        {
            values[i] = Value(keys[i]);
        }
    }

    /// <summary>
    /// The number at a place of the ascending order; none before the place is larger afterwards, and none behind it smaller.
    /// </summary>
    /// <param name="values">All of them; their order changes.</param>
    /// <param name="place">From 0.</param>
    public static double At(Span<double> values, int place)
    {
        (int first, int last) = (0, values.Length - 1);
        for (int parting = 0; last - first >= Few && parting < MostPartings; parting++)
        {
            (int left, int right) = Part(values, first, last);
            if (place <= right)
            {
                last = right;
            }
            else if (place >= left)
            {
                first = left;
            }
            else
            {
                return values[place];
            }
        }

        Sort(values[first..(last + 1)]);
        return values[place];
    }

    // Those up to the right end are at most the pivot, those from the left one at least; what lies between is equal to it.
    private static (int Left, int Right) Part(Span<double> values, int first, int last)
    {
        double pivot = Middle(values[first], values[first + ((last - first) / 2)], values[last]);
        (int left, int right) = (first, last);
        while (left <= right)
        {
            while (values[left] < pivot)
            {
                left++;
            }

            while (values[right] > pivot)
            {
                right--;
            }

            if (left <= right)
            {
                (values[left], values[right]) = (values[right], values[left]);
                left++;
                right--;
            }
        }

        return (left, right);
    }

    private static double Middle(double a, double b, double c) => Math.Max(Math.Min(a, b), Math.Min(Math.Max(a, b), c));

    private static void Insert(Span<double> values)
    {
        for (int i = 1; i < values.Length; i++)
        {
            double value = values[i];
            int at = i;
            for (; at > 0 && values[at - 1] > value; at--)
            {
                values[at] = values[at - 1];
            }

            values[at] = value;
        }
    }

    private static ulong[] Dealt(ulong[] keys)
    {
        int[] counts = Counts(keys);
        var dealt = new ulong[keys.Length];
        for (int digit = 0; digit < Digits; digit++)
        {
            Span<int> pile = counts.AsSpan(digit * Piles, Piles);
            if (pile[Of(keys[0], digit)] == keys.Length)
            {
                continue;
            }

            int start = 0;
            foreach (ref int count in pile)
            {
                (count, start) = (start, start + count);
            }

            foreach (ulong key in keys)
            {
                dealt[pile[Of(key, digit)]++] = key;
            }

            (keys, dealt) = (dealt, keys);
        }

        return keys;
    }

    private static int[] Counts(ulong[] keys)
    {
        var counts = new int[Digits * Piles];
        foreach (ulong key in keys)
        {
            for (int digit = 0; digit < Digits; digit++)
            {
                counts[(digit * Piles) + Of(key, digit)]++;
            }
        }

        return counts;
    }

    private static int Of(ulong key, int digit) => (int)((key >> (digit * Digit)) & (Piles - 1));

    // Bits of negative numbers grow as the numbers fall.
    private static ulong Key(double value)
    {
        ulong bits = BitConverter.DoubleToUInt64Bits(value);
        return (bits & Sign) == 0 ? bits ^ Sign : ~bits;
    }

    private static double Value(ulong key) => BitConverter.UInt64BitsToDouble((key & Sign) == 0 ? ~key : key ^ Sign);
}
