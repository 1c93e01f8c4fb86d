namespace SweepStats.Statistics;

/// <summary>A closed range of numbers; an end may be infinite.</summary>
/// <param name="Low">Lower end, not above <paramref name="High"/>.</param>
/// <param name="High">Upper end.</param>
public readonly record struct Interval(double Low, double High)
{
    /// <summary>High minus low; infinite where an end is.</summary>
    public double Width => High - Low;

    /// <summary>Whether a value lies inside, ends included.</summary>
    public bool Contains(double value) => Low <= value && value <= High;
}
