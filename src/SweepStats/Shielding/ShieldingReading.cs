using SweepStats.Doubts;
using SweepStats.Quantities;
using SweepStats.Statistics;

namespace SweepStats.Shielding;

/// <summary>How a reading stands to the floor.</summary>
public enum ShieldingState
{
    /// <summary>Covered level at least 10 dB above the floor: the noise correction is below 0.42 dB.</summary>
    Clear,

    /// <summary>Corrected for the floor; still bounded from both sides.</summary>
    NearFloor,

    /// <summary>The floor hides how much more the specimen shields: a lower bound only.</summary>
    Capped,

    /// <summary>
    /// The receiver was overloaded: a lower bound where the reference alone reads too low, nothing where the covered level does.
    /// </summary>
    Overloaded,

    /// <summary>No floor is known: whether the reading is capped cannot be seen.</summary>
    NoFloor,
}

/// <summary>A value with its two-sided interval. An estimate never travels without one.</summary>
/// <param name="Value">Estimate.</param>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
/// <param name="Confidence">Level of the interval.</param>
public readonly record struct ShieldingEstimate(Decibels Value, Decibels Low, Decibels High, Confidence Confidence);

/// <summary>What a reading of shielding rests on.</summary>
/// <remarks>Levels are log means in dB on the scale of the sweeps. Dynamic range is null where it cannot be told.</remarks>
public sealed record ReadingEvidence
{
    // What is not known is kept as no number, as in the columns that a reading is made from.
    private readonly double _floorDb = double.NaN;
    private readonly double _leakageDb = double.NaN;
    private readonly double _dynamicRange = double.NaN;
    private readonly double _standardUncertaintyDb = double.NaN;
    private readonly double _degreesOfFreedom = double.NaN;
    private readonly double _oneSidedLow = double.NaN;

    /// <summary>Frequency.</summary>
    public required Hertz At { get; init; }

    /// <summary>Reference level.</summary>
    public required double ReferenceDb { get; init; }

    /// <summary>Covered level.</summary>
    public required double CoveredDb { get; init; }

    /// <summary>Floor level; null where none is known.</summary>
    public required double? FloorDb { get => Known(_floorDb); init => _floorDb = value ?? double.NaN; }

    // Two equal powers add up to 3 dB more than each.
    private const double OverNoiseDb = 3;

    /// <summary>Level of what reaches the receiver on another way than through the specimen; null where nothing does.</summary>
    public double? LeakageDb { get => Known(_leakageDb); init => _leakageDb = value ?? double.NaN; }

    /// <summary>Whether the leakage, and not the noise, ends what this set-up can show.</summary>
    public bool LeakageRules => LeakageDb is { } leakage && !(FloorDb > leakage + OverNoiseDb);

    /// <summary>Largest shielding that this set-up can still bound from both sides.</summary>
    public required Decibels? DynamicRange
    {
        get => Known(_dynamicRange) is { } db ? new Decibels(db) : null;
        init => _dynamicRange = value?.Value ?? double.NaN;
    }

    /// <summary>Combined standard uncertainty in dB; null where repeats are missing.</summary>
    public required double? StandardUncertaintyDb
    {
        get => Known(_standardUncertaintyDb);
        init => _standardUncertaintyDb = value ?? double.NaN;
    }

    /// <summary>Effective degrees of freedom; null where repeats are missing, infinity where every part is known.</summary>
    public required double? DegreesOfFreedom { get => Known(_degreesOfFreedom); init => _degreesOfFreedom = value ?? double.NaN; }

    /// <summary>
    /// Lower limit with the whole confidence on one side, for claims of the kind "at least"; null where no limit can be had.
    /// </summary>
    public required Decibels? OneSidedLow
    {
        get => Known(_oneSidedLow) is { } db ? new Decibels(db) : null;
        init => _oneSidedLow = value?.Value ?? double.NaN;
    }

    /// <summary>The floor at this frequency holds more than noise.</summary>
    public required bool Ambient { get; init; }

    /// <summary>The covered level cannot be told from the floor, whatever else stands against the reading.</summary>
    public bool HiddenByFloor { get; init; }

    /// <summary>
    /// The covered level clears the noise, but a leakage that the noise of the plate sweeps may hide could make it alone.
    /// </summary>
    public bool HiddenBehindPlate { get; init; }

    /// <summary>What stands against taking the reading for a value.</summary>
    public ReadingDoubts Doubts { get; init; }

    /// <summary>The reference rises less than 10 dB over the floor: there is no range to speak of.</summary>
    public required bool ReferenceInFloor { get; init; }

    internal static double? Known(double value) => double.IsNaN(value) ? null : value;
}

/// <summary>Shielding at one frequency: closed, so that a bound cannot be taken for a value.</summary>
public abstract record ShieldingReading
{
    private ShieldingReading(ShieldingState state, ReadingEvidence evidence)
    {
        State = state;
        Evidence = evidence;
    }

    /// <summary>How the reading stands to the floor.</summary>
    public ShieldingState State { get; }

    /// <summary>What it rests on.</summary>
    public ReadingEvidence Evidence { get; }

    /// <summary>
    /// The shielding in dB, or the bound that it lies above; not a number, and a bound, where nothing is known.
    /// </summary>
    internal (double Value, bool Bound) ValueOrBound => this switch
    {
        Measured m => (m.Shielding.Value.Value, false),
        // Without a floor a single sweep too is known from below only.
        Unrepeated u => (u.Indication.Value, u.State == ShieldingState.NoFloor),
        AtLeast b => (b.Bound.Value, true),
        _ => (double.NaN, true),
    };

    /// <summary>
    /// What is known, in dB: "40.2 dB (40.0 to 40.4 dB, 95 %)", "at least 59.3 dB"; limits rounded away from the claim.
    /// </summary>
    public sealed override string ToString() => this switch
    {
        Measured { Shielding: var se } =>
            $"{Tenths.Nearest(se.Value.Value)} dB ({Tenths.Down(se.Low.Value)} to {Tenths.Up(se.High.Value)} dB, "
                + $"{se.Confidence})",
        AtLeast { Bound: var bound } => $"at least {Tenths.Down(bound.Value)} dB",
        Unrepeated { Indication: var indication } =>
            $"{Tenths.Nearest(indication.Value)} dB, from too few sweeps for an interval",
        Unreadable { Reason: var reason } => reason,
        _ => State.ToString(),
    };

    /// <summary>Bounded from both sides.</summary>
    /// <param name="State">Clear or near-floor.</param>
    /// <param name="Evidence">What it rests on.</param>
    /// <param name="Shielding">Estimate with interval.</param>
    public sealed record Measured(ShieldingState State, ReadingEvidence Evidence, ShieldingEstimate Shielding)
        : ShieldingReading(State, Evidence);

    /// <summary>
    /// Known only from below: the floor hides the rest, nobody knows the floor, or the reference reads too low.
    /// </summary>
    /// <param name="State">Capped, no-floor or overloaded.</param>
    /// <param name="Evidence">
    /// What it rests on; without repeats (no standard uncertainty) the bound allows for noise alone.
    /// </param>
    /// <param name="Bound">The shielding is at least this much, with the confidence of one side of the interval.</param>
    public sealed record AtLeast(ShieldingState State, ReadingEvidence Evidence, Decibels Bound)
        : ShieldingReading(State, Evidence);

    /// <summary>Computed from too few repeats for any interval.</summary>
    /// <param name="State">Clear, near-floor or no-floor.</param>
    /// <param name="Evidence">What it rests on.</param>
    /// <param name="Indication">
    /// The difference of the levels, corrected for the floor; how far it can be trusted is not known.
    /// </param>
    public sealed record Unrepeated(ShieldingState State, ReadingEvidence Evidence, Decibels Indication)
        : ShieldingReading(State, Evidence);

    /// <summary>Nothing can be claimed.</summary>
    /// <param name="State">Capped or overloaded.</param>
    /// <param name="Evidence">What it rests on.</param>
    /// <param name="Reason">Why, in a person's words.</param>
    public sealed record Unreadable(ShieldingState State, ReadingEvidence Evidence, string Reason)
        : ShieldingReading(State, Evidence);
}
