using SweepStats.Checks;
using SweepStats.Shielding;

namespace SweepStats.Fields;

/// <summary>What one reading says to a pulse.</summary>
/// <param name="Db">Shielding, or its bound; 0 where nothing is known.</param>
/// <param name="IsKnown">Whether anything is known.</param>
/// <param name="IsBound">Whether it is known from below alone.</param>
/// <param name="Bias">How far the shielding may lie outside its interval for what findings say; finite.</param>
internal readonly record struct PulseReading(double Db, bool IsKnown, bool IsBound, Bias Bias)
{
    /// <summary>The readings of a curve, with what findings say of them.</summary>
    public static PulseReading[] Of(ShieldingCurve curve, ImmutableArray<Finding> findings)
    {
        var biases = new SpecimenBiases(curve.Name, findings);
        return [.. curve.Readings.Select(r => Of(r, biases.None ? default : biases.SumAt(r.Evidence.At)))];
    }

    // By how much a finding may lower it nobody knows: then nothing is known. By how much it may raise it: then it is a bound.
    private static PulseReading Of(ShieldingReading reading, Bias bias)
    {
        (double value, bool bound) = reading.ValueOrBound;
        bool known = double.IsFinite(value) && double.IsFinite(bias.LowerByDb);
        bool open = bound || double.IsInfinity(bias.HigherByDb);
        return known
            ? new PulseReading(value, true, open, new Bias(bias.LowerByDb, open ? 0 : bias.HigherByDb))
            : new PulseReading(0, false, true, default);
    }
}
