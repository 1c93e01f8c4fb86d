using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using SweepStats.Verdicts;

namespace SweepStats.Fields;

/// <summary>
/// What is left at most of a steady field behind one specimen, at every measured frequency of the analysed band at once.
/// Immutable.
/// </summary>
/// <remarks>
/// E·10^(−L/20), with L in dB the lowest one-sided lower limit of the shielding over the band
/// (<see cref="BandStatement.AtLeast"/>), less what findings say it may lie below its interval. By the definition of shielding as
/// a ratio of field strengths, 20·log10(E/E'); it supposes that behind and in front of the specimen levels stand for the same
/// component of the field, as the two measurements do. A pulse is no steady field at one frequency and is not answered for.
/// </remarks>
/// <param name="Name">Which specimen.</param>
/// <param name="VoltsPerMetre">Upper limit in V/m; null where nothing is claimed.</param>
/// <param name="Silence">Why nothing is claimed; null where something is.</param>
public sealed record ResidualField(SpecimenName Name, double? VoltsPerMetre, FieldSilence? Silence)
{
    /// <summary>The lower limit of the shielding that the claim rests on; null where nothing is claimed.</summary>
    public Decibels? Shielding { get; init; }

    /// <summary>
    /// Whether no more is left than is tolerable; null where no tolerable field is stated or nothing is claimed.
    /// </summary>
    public bool? IsTolerable { get; init; }

    /// <summary>One for each specimen; none where no field is stated.</summary>
    /// <param name="threat">The field; null where none is stated.</param>
    /// <param name="shielding">Curves and what holds over the band, specimen by specimen.</param>
    /// <param name="findings">What the checks found.</param>
    /// <param name="trust">Whether the measurement can be trusted.</param>
    public static ImmutableArray<ResidualField> Of(
        FieldThreat? threat, CurvesAndBands shielding, ImmutableArray<Finding> findings, Trust trust)
    {
        ArgumentNullException.ThrowIfNull(shielding);
        return threat is null ? []
            : [.. shielding.Curves.Zip(shielding.Bands,
                (curve, band) => Of(threat, curve, LowestLimit(curve, band, findings), trust))];
    }

    private static ResidualField Of(FieldThreat threat, ShieldingCurve curve, double? limit, Trust trust)
    {
        FieldSilence? silence = trust == Trust.Untrustworthy ? FieldSilence.Untrustworthy
            : limit is not { } db ? FieldSilence.NoClaim
            : double.IsNegativeInfinity(db) ? FieldSilence.FindingOfUnknownSize
            : db <= 0 ? FieldSilence.NothingKeptOut : null;
        if (silence is not null)
        {
            return new ResidualField(curve.Name, null, silence);
        }

        double left = threat.VoltsPerMetre * Math.Pow(10, -limit!.Value / 20);
        return new ResidualField(curve.Name, left, null)
        {
            Shielding = new Decibels(limit.Value),
            IsTolerable = threat.TolerableVoltsPerMetre is { } tolerable ? left <= tolerable : null,
        };
    }

    private static double? LowestLimit(ShieldingCurve curve, BandStatement band, ImmutableArray<Finding> findings)
    {
        if (band.AtLeast is null)
        {
            return null;
        }

        var biases = new SpecimenBiases(curve.Name, findings);
        return curve.Readings.Min(r => r.Evidence.OneSidedLow!.Value.Value - biases.SumAt(r.Evidence.At).LowerByDb);
    }
}
