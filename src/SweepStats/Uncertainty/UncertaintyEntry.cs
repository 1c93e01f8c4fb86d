namespace SweepStats.Uncertainty;

/// <summary>How the error of an uncertainty entry is spread over its half-width.</summary>
public enum ErrorDistribution
{
    /// <summary>Half-width is k standard uncertainties.</summary>
    Normal,

    /// <summary>Anywhere within the half-width alike: divide by √3.</summary>
    Rectangular,

    /// <summary>Most likely in the middle: divide by √6.</summary>
    Triangular,

    /// <summary>Flat in the middle, falling off to the half-width: between rectangular and triangular.</summary>
    Trapezoidal,

    /// <summary>Most likely at the ends, as mismatch is: divide by √2.</summary>
    Arcsine,
}

/// <summary>Which levels an error acts on.</summary>
public enum ErrorActsOn
{
    /// <summary>Reference levels.</summary>
    Reference,

    /// <summary>Covered levels.</summary>
    Covered,

    /// <summary>Both.</summary>
    Both,
}

/// <summary>An uncertainty that repeats do not show (type B), as the campaign states it.</summary>
public sealed record UncertaintyEntry
{
    /// <summary>Name for people.</summary>
    public required string Name { get; init; }

    /// <summary>Half-width in dB, not negative.</summary>
    public required double HalfWidthDb { get; init; }

    /// <summary>How the error is spread.</summary>
    public required ErrorDistribution Distribution { get; init; }

    /// <summary>Standard uncertainties in the half-width; only for a normal distribution.</summary>
    public double CoverageFactor { get; init; } = 2;

    /// <summary>Half-width of the flat top in dB; only for a trapezoidal distribution.</summary>
    public double TopHalfWidthDb { get; init; }

    /// <summary>
    /// How well the standard uncertainty is known, in degrees of freedom; infinite where nothing else is stated; only for a
    /// normal distribution.
    /// </summary>
    public double DegreesOfFreedom { get; init; } = double.PositiveInfinity;

    /// <summary>
    /// The reflections that the half-width comes from; null where it was stated itself. For the record: figures rest on the
    /// half-width.
    /// </summary>
    public Mismatch? Mismatch { get; init; }

    /// <summary>
    /// Which levels it acts on. The floor is none of them: it is measured on the scale of the readings, so an error of level,
    /// cable or antenna moves it not at all or by what moves the reading too.
    /// </summary>
    public ErrorActsOn ActsOn { get; init; } = ErrorActsOn.Covered;

    /// <summary>The error is the same in reference and covered and cancels in their difference.</summary>
    public bool Common { get; init; }

    /// <summary>The error of one level in dB as a distribution.</summary>
    public Spread Spread => Distribution switch
    {
        ErrorDistribution.Rectangular => new RectangularSpread(HalfWidthDb),
        ErrorDistribution.Triangular => new TrapezoidalSpread(HalfWidthDb, 0),
        ErrorDistribution.Trapezoidal => new TrapezoidalSpread(HalfWidthDb, TopHalfWidthDb),
        ErrorDistribution.Arcsine => new ArcsineSpread(HalfWidthDb),
        _ when double.IsFinite(DegreesOfFreedom) => new StudentSpread(HalfWidthDb / CoverageFactor, DegreesOfFreedom),
        _ => new NormalSpread(HalfWidthDb / CoverageFactor),
    };

    /// <summary>Standard uncertainty in dB of one level. Source of the divisors: JCGM 100:2008, 4.3.</summary>
    public double StandardUncertaintyDb => Spread.StandardUncertainty;

    /// <summary>
    /// How often the error enters the difference of reference and covered: not at all where it is common to both, twice where
    /// each has its own.
    /// </summary>
    public int TimesInDifference => ActsOn != ErrorActsOn.Both ? 1 : Common ? 0 : 2;
}
