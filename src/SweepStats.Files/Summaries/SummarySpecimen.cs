using System.Text.Json.Serialization;

namespace SweepStats.Files.Summaries;

/// <summary>A specimen of a summary. Immutable.</summary>
public sealed record SummarySpecimen
{
    /// <summary>Its lot.</summary>
    public required string Lot { get; init; }

    /// <summary>Its name within the lot.</summary>
    public required string Specimen { get; init; }

    /// <summary>Sweeps of it.</summary>
    public required int Sweeps { get; init; }

    /// <summary>How often it was put in place; null where that is not known.</summary>
    public required int? Placements { get; init; }

    /// <summary>Lowest frequency that it was compared at, in Hz.</summary>
    public required double StartHz { get; init; }

    /// <summary>Highest frequency that it was compared at, in Hz.</summary>
    public required double StopHz { get; init; }

    /// <summary>Level of the two-sided intervals, and one-sided of <see cref="AtLeastDb"/>.</summary>
    public required double Confidence { get; init; }

    /// <summary>What it shields at every frequency of the band at least, in dB; null where nothing can be said.</summary>
    public required double? AtLeastDb { get; init; }

    /// <summary>Where that limit lies, in Hz.</summary>
    public required double? WeakestHz { get; init; }

    /// <summary>Mean over the band, in dB.</summary>
    public required Estimate MeanDb { get; init; }

    /// <summary>What nine tenths of the frequencies reach, in dB.</summary>
    public required Estimate P10Db { get; init; }

    /// <summary>Share of the band that meets the requirement; null without one, or under a fault.</summary>
    public required Estimate? ShareMeeting { get; init; }

    /// <summary>What is left of a stated field; null where none is, and then the file has no such member.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SummaryField? Field { get; init; }

    /// <summary>What was decided; null where nothing was required.</summary>
    public required SummaryOutcome? Requirement { get; init; }

    /// <summary>Frequencies at which it is known from below only.</summary>
    public required int CappedPoints { get; init; }

    /// <summary>Frequencies of the band.</summary>
    public required int Points { get; init; }

    /// <summary>Lot and name.</summary>
    [JsonIgnore]
    public string Name => $"{Lot}/{Specimen}";
}

/// <summary>What is left of a steady field behind a specimen; "within" or "not-shown" where a tolerable one is stated.</summary>
public sealed record SummaryField(double? AtMostVPerM, double? ShieldingDb, string? Tolerable, string? NoClaim);

/// <summary>
/// What was decided of a specimen: "meets", "fails", "undecided" or "cannot-tell", how many frequencies have each of these by
/// themselves, and where it is least probable that the requirement is met.
/// </summary>
public sealed record SummaryOutcome(string Outcome, int Meets, int Fails, int Undecided,
    [property: JsonPropertyName("cannot-tell")] int CannotTell, double? LeastProbability, double? LeastProbabilityAtMost,
    double? LeastProbableHz);
