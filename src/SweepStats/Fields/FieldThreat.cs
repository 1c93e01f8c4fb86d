namespace SweepStats.Fields;

/// <summary>A steady field that a specimen is to keep out. Immutable.</summary>
/// <param name="VoltsPerMetre">Field strength in front of the specimen in V/m, positive and finite.</param>
/// <param name="TolerableVoltsPerMetre">Field strength behind it that is tolerable, in V/m; null where not stated.</param>
public sealed record FieldThreat(double VoltsPerMetre, double? TolerableVoltsPerMetre);
