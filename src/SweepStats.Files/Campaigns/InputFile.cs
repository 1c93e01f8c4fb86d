namespace SweepStats.Files.Campaigns;

/// <summary>A file that an analysis rests on.</summary>
/// <param name="Path">Path relative to the campaign, with '/' between folders.</param>
/// <param name="Sha256">SHA-256 of its bytes in lower-case hexadecimal.</param>
public sealed record InputFile(string Path, string Sha256);
