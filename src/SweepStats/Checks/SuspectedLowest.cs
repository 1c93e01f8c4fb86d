using SweepStats.Floor;
using SweepStats.Shielding;

namespace SweepStats.Checks;

/// <summary>
/// What a minimum hold that nobody stated would do to intervals that were worked out for another detector. Immutable.
/// </summary>
/// <remarks>
/// The ends of an interval say how strong and how weak the covered signal may be. The reading that each of them stands for is
/// read again by the law of the lowest of a thousand looks (<see cref="HeldNoise"/>), and so is the reference. What that moves an
/// end by is the bias. The error of the readings is in the end already. Units: dB. Worked out here, no source.
/// </remarks>
internal sealed class SuspectedLowest
{
    // Bounds have no width to hold a shift against. 0.5 dB is what a reader of a bound would not round away.
    private const double OfBoundDb = 0.5;

    private readonly DetectorNoise _used;
    private readonly HeldNoise _lowest;

    /// <param name="seen">The evidence.</param>
    /// <param name="floor">Its floor, which was measured.</param>
    public SuspectedLowest(Evidence seen, NoiseFloor floor)
    {
        (_used, _lowest) = (floor.Noise[0], HeldNoise.Lowest(floor.ReadingDeviationDb));
        var biases = ImmutableArray.CreateBuilder<PlacedBias>();
        foreach (ShieldingCurve curve in seen.Curves)
        {
            foreach (ShieldingReading reading in curve.Readings)
            {
                Add(biases, curve, reading);
            }
        }

        Biases = biases.ToImmutable();
    }

    /// <summary>How far each reading may be off that claims something.</summary>
    public ImmutableArray<PlacedBias> Biases { get; }

    /// <summary>A minimum hold would move some reading by what matters to it.</summary>
    public bool Matters { get; private set; }

    /// <summary>What is added to a message where it does not matter.</summary>
    public string MattersHere => Matters ? string.Empty : " Here it would move no claim by as much as matters.";

    /// <summary>How much it weighs.</summary>
    public Severity Weight => Matters ? Severity.Warning : Severity.Note;

    private void Add(ImmutableArray<PlacedBias>.Builder biases, ShieldingCurve curve, ShieldingReading reading)
    {
        ReadingEvidence seen = reading.Evidence;
        if (seen.OneSidedLow is not { } low || seen.FloorDb is not { } floor)
        {
            return;
        }

        double lower = Lower(seen.ReferenceDb, low.Value, floor);
        double higher = reading is ShieldingReading.Measured { Shielding.High: var high }
            ? Higher(seen.ReferenceDb, high.Value, floor) : 0;
        Matters |= reading is ShieldingReading.Measured ? Materiality.Matters(lower, reading) : lower >= OfBoundDb;
        biases.Add(new PlacedBias(curve.Name, seen.At, new Bias(lower, higher)));
    }

    private double Lower(double reference, double low, double floor) => Math.Max(0,
        Strongest(Reading(reference - low, floor), floor) - (reference - low)
            + reference - SignalInNoise.Level(reference, floor, _lowest));

    private double Higher(double reference, double high, double floor) => Math.Max(0,
        reference - high - SignalInNoise.Level(Reading(reference - high, floor), floor, _lowest)
            + Strongest(reference, floor) - reference);

    // The log mean that a signal shows by the law the intervals were worked out with.
    private double Reading(double signal, double floor) =>
        floor + _used.Rise(Math.Pow(10, (signal - floor + _used.LogMeanOffset) / 10));

    private double Strongest(double reading, double floor) =>
        floor - _lowest.LogMeanOffset + _lowest.StrongestSnrInDecibels(reading - floor);
}
