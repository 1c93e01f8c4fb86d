using System.Runtime.InteropServices;

namespace SweepStats.Fields;

/// <summary>A field over time, at even steps from the start of the pulse. Immutable.</summary>
public sealed class Waveform
{
    private const double Tenth = 0.1, NineTenths = 0.9, Half = 0.5;

    private readonly int _at;

    // A pulse that swings below zero first, or most, is told by its size.
    private readonly int _sign;

    /// <param name="samples">Field in V/m, at least three samples, not all zero; kept and not to be changed.</param>
    /// <param name="step">Step in seconds.</param>
    internal Waveform(double[] samples, double step)
    {
        VoltsPerMetre = ImmutableCollectionsMarshal.AsImmutableArray(samples);
        StepSeconds = step;
        _at = HighestAt(samples);
        _sign = Math.Sign(samples[_at]);
    }

    /// <summary>Field at each step, in V/m.</summary>
    public ImmutableArray<double> VoltsPerMetre { get; }

    /// <summary>Step in seconds.</summary>
    public double StepSeconds { get; }

    /// <summary>Its first part.</summary>
    /// <param name="seconds">How long, above two steps.</param>
    internal Waveform Until(double seconds) =>
        new(VoltsPerMetre.AsSpan()[..Math.Min(VoltsPerMetre.Length, (int)Math.Ceiling(seconds / StepSeconds) + 1)].ToArray(),
            StepSeconds);

    /// <summary>Peak, rise, width and energy; by lines between samples, and by a parabola through the three highest.</summary>
    public PulseFigures Figures()
    {
        (double place, double peak) = Top();
        return new PulseFigures(
            peak, place * StepSeconds, (FirstAbove(NineTenths * peak) - FirstAbove(Tenth * peak)) * StepSeconds,
            (LastAbove(Half * peak) - BeginOf(Half * peak)) * StepSeconds, Energy());
    }

    /// <summary>The sample that is largest in size.</summary>
    internal static int HighestAt(ReadOnlySpan<double> samples)
    {
        int at = 0;
        for (int n = 1; n < samples.Length; n++)
        {
            at = Math.Abs(samples[n]) > Math.Abs(samples[at]) ? n : at;
        }

        return at;
    }

    private double Size(int n) => _sign * VoltsPerMetre[n];

    private Summit Top()
    {
        if (_at == 0 || _at == VoltsPerMetre.Length - 1)
        {
            return new Summit(_at, Size(_at));
        }

        double before = Size(_at - 1), top = Size(_at), after = Size(_at + 1);
        double bend = before - (2 * top) + after;
        double shift = bend < 0 ? 0.5 * (before - after) / bend : 0;
        return new Summit(_at + shift, top - (0.25 * (before - after) * shift));
    }

    private double FirstAbove(double level)
    {
        int n = 0;
        while (n < _at && Size(n) < level)
        {
            n++;
        }

        return Between(n - 1, n, level);
    }

    private double BeginOf(double level)
    {
        int n = _at;
        while (n > 0 && Size(n - 1) >= level)
        {
            n--;
        }

        return Between(n - 1, n, level);
    }

    private double LastAbove(double level)
    {
        int n = _at;
        while (n < VoltsPerMetre.Length - 1 && Size(n + 1) >= level)
        {
            n++;
        }

        return n == VoltsPerMetre.Length - 1 ? n : Between(n, n + 1, level);
    }

    private double Between(int left, int right, double level) =>
        left < 0 || Size(right) == Size(left) ? right : left + ((level - Size(left)) / (Size(right) - Size(left)));

    private double Energy()
    {
        double squares = 0;
        foreach (double field in VoltsPerMetre)
        {
            squares += field * field;
        }

        return squares * StepSeconds / DoubleExponential.FreeSpaceOhm;
    }

    private readonly record struct Summit(double Place, double Peak);
}
