namespace SweepStats.Files.Campaigns;

/// <summary>Field strengths that a campaign states for its exposure question.</summary>
/// <param name="ThreatVoltsPerMetre">Field outside, in V/m.</param>
/// <param name="TolerableVoltsPerMetre">Field that may remain inside, in V/m.</param>
public sealed record FieldPlan(double ThreatVoltsPerMetre, double TolerableVoltsPerMetre);
