namespace SweepStats.Report.Sheets;

/// <summary>A frequency that an axis names.</summary>
/// <param name="Hertz">Where it stands.</param>
/// <param name="Text">How it is written.</param>
/// <param name="Anchor">Which part of the text stands there: <c>start</c>, <c>middle</c> or <c>end</c>.</param>
internal sealed record FrequencyMark(double Hertz, string Text, string Anchor)
{
    // Digits of the usual type are a little over half as wide as high, and some room has to stay.
    private const double HalfOfLetter = 3.6;
    private const double Gap = 5;

    /// <summary>Half of the room that it takes.</summary>
    public double HalfWidth => (HalfOfLetter * Text.Length) + Gap;
}
