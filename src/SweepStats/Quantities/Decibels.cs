namespace SweepStats.Quantities;

/// <summary>A ratio of two levels in dB; for shielding, positive means attenuation. The default value is 0 dB.</summary>
/// <param name="Value">dB.</param>
public readonly record struct Decibels(double Value) : IComparable<Decibels>
{
    /// <summary>Share of the field strength that a shielding of this many dB blocks: 1 − 10^(−dB/20); 20 dB block 90 %.</summary>
    public double FieldBlocked => 1 - Math.Pow(10, -Value / 20);

    /// <summary>Share of the power that a shielding of this many dB blocks: 1 − 10^(−dB/10); 20 dB block 99 %.</summary>
    public double PowerBlocked => 1 - Math.Pow(10, -Value / 10);

    /// <inheritdoc/>
    public int CompareTo(Decibels other) => Value.CompareTo(other.Value);

    /// <summary>Sum of two ratios.</summary>
    public static Decibels operator +(Decibels left, Decibels right) => new(left.Value + right.Value);

    /// <summary>Difference of two ratios.</summary>
    public static Decibels operator -(Decibels left, Decibels right) => new(left.Value - right.Value);

    /// <summary>Whether the left ratio is smaller.</summary>
    public static bool operator <(Decibels left, Decibels right) => left.Value < right.Value;

    /// <summary>Whether the left ratio is larger.</summary>
    public static bool operator >(Decibels left, Decibels right) => left.Value > right.Value;

    /// <summary>Whether the left ratio is smaller or the same.</summary>
    public static bool operator <=(Decibels left, Decibels right) => left.Value <= right.Value;

    /// <summary>Whether the left ratio is larger or the same.</summary>
    public static bool operator >=(Decibels left, Decibels right) => left.Value >= right.Value;
}
