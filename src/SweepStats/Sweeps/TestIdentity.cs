namespace SweepStats.Sweeps;

/// <summary>
/// Who tested what with which instrument, in the words of the laboratory; null where nobody stated it. Immutable.
/// </summary>
/// <remarks>Texts are as written and not yet harmless to print. Nothing of it changes a figure.</remarks>
public sealed record TestIdentity
{
    /// <summary>Nothing is stated.</summary>
    public static TestIdentity Unstated { get; } = new();

    /// <summary>Who answers for the test.</summary>
    public string? Laboratory { get; init; }

    /// <summary>Whom the report is for.</summary>
    public string? Customer { get; init; }

    /// <summary>Who took the sweeps.</summary>
    public string? Operator { get; init; }

    /// <summary>Receiver, source and antennas.</summary>
    public string? Instrument { get; init; }

    /// <summary>Certificate of the instrument and until when it holds.</summary>
    public string? Calibration { get; init; }

    /// <summary>When the sweeps were taken, where it is not left to their own times.</summary>
    public string? Date { get; init; }
}
