namespace SweepStats.Cli;

/// <summary>A campaign under the name that the command line gives it.</summary>
/// <param name="Folder">The name.</param>
/// <param name="Analysis">What was found.</param>
internal sealed record NamedAnalysis(string Folder, CampaignAnalysis Analysis);
