namespace SweepStats.Quantities;

/// <summary>A frequency in Hz. The default value is 0 Hz, which a swept trace may legally start at.</summary>
/// <param name="Value">Hz.</param>
public readonly record struct Hertz(double Value) : IComparable<Hertz>
{
    /// <inheritdoc/>
    public int CompareTo(Hertz other) => Value.CompareTo(other.Value);

    /// <summary>Whether the left frequency is lower.</summary>
    public static bool operator <(Hertz left, Hertz right) => left.Value < right.Value;

    /// <summary>Whether the left frequency is higher.</summary>
    public static bool operator >(Hertz left, Hertz right) => left.Value > right.Value;

    /// <summary>Whether the left frequency is lower or the same.</summary>
    public static bool operator <=(Hertz left, Hertz right) => left.Value <= right.Value;

    /// <summary>Whether the left frequency is higher or the same.</summary>
    public static bool operator >=(Hertz left, Hertz right) => left.Value >= right.Value;
}
