namespace SweepStats.Quantities;

/// <summary>A range of frequencies, both ends included.</summary>
public readonly record struct FrequencyBand
{
    /// <summary>Creates a band.</summary>
    /// <exception cref="ArgumentException">The band is empty or an end is not a frequency.</exception>
    public FrequencyBand(Hertz start, Hertz stop)
    {
        if (!(start.Value >= 0 && stop >= start && double.IsFinite(stop.Value)))
        {
            throw new ArgumentException(FormattableString.Invariant(
                $"A band runs from a start to a higher stop; {start.Value} Hz to {stop.Value} Hz does not."));
        }

        Start = start;
        Stop = stop;
    }

    /// <summary>Lower end.</summary>
    public Hertz Start { get; }

    /// <summary>Upper end.</summary>
    public Hertz Stop { get; }

    /// <summary>Whether a frequency lies inside, ends included.</summary>
    public bool Contains(Hertz frequency) => Start <= frequency && frequency <= Stop;
}
