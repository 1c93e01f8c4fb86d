using SweepStats.Quantities;

namespace SweepStats.Receivers;

/// <summary>One station, heard or silent under the cover. Immutable.</summary>
/// <remarks>
/// The margin M is the level without the cover less the sensitivity. Silent shows that the cover takes at least M, heard that it
/// takes at most M. Sensitivity is the level at which this receiver, with these settings (mode, bandwidth, squelch), just stops
/// being heard.
/// </remarks>
public sealed record ReceiverObservation
{
    // Further below its sensitivity than this many standard uncertainties no receiver hears: a figure is wrong.
    private const double Impossible = 3;

    /// <summary>Where stations lie: a figure beyond is a typing error, or one in another unit than Hz.</summary>
    public static FrequencyBand Frequencies { get; } = new(new Hertz(1e3), new Hertz(1e12));

    /// <summary>Name of the station, as the user calls it.</summary>
    public required string Name { get; init; }

    /// <summary>Frequency; null where a single observation states none.</summary>
    public required Hertz? Frequency { get; init; }

    /// <summary>Level at the receiver without the cover.</summary>
    public required ReceivedLevel Level { get; init; }

    /// <summary>Sensitivity in dBm.</summary>
    public required double SensitivityDbm { get; init; }

    /// <summary>Its standard uncertainty in dB.</summary>
    public required double SensitivityUncertaintyDb { get; init; }

    /// <summary>Whether it was heard without the cover; null where nobody says.</summary>
    public required bool? HeardUncovered { get; init; }

    /// <summary>Whether it was heard under the cover.</summary>
    public required bool HeardCovered { get; init; }

    /// <summary>The receiver, whose sensitivity errs in the same way wherever it is used; null where it is not named.</summary>
    public string? Receiver { get; init; }

    /// <summary>The source, whose level errs in the same way wherever it is heard; null where it is not named.</summary>
    public string? Source { get; init; }

    /// <summary>Whether the uncertainties were stated; else both stand as 0 and nothing has a confidence.</summary>
    public bool IsUncertaintyStated { get; init; } = true;

    /// <summary>M in dB.</summary>
    public double MarginDb => Level.Dbm - SensitivityDbm;

    /// <summary>Standard uncertainty of M in dB: level and sensitivity err independently.</summary>
    public double UncertaintyDb =>
        Math.Sqrt((Level.UncertaintyDb * Level.UncertaintyDb) + (SensitivityUncertaintyDb * SensitivityUncertaintyDb));

    /// <summary>Whether it is evidence, or why not.</summary>
    public EvidenceState State => HeardCovered
        ? HeardUncovered == false ? EvidenceState.SilentUncovered : Plausible
        : HeardUncovered switch { true => Plausible, false => EvidenceState.SilentUncovered, null => EvidenceState.Uncontrolled };

    private EvidenceState Plausible =>
        MarginDb < -Impossible * UncertaintyDb ? EvidenceState.BelowSensitivity : EvidenceState.Counts;
}
