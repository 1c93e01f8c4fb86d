namespace SweepStats.Files.Places;

/// <summary>Who a folder belongs to, as the system numbers users and groups.</summary>
internal readonly record struct FolderOwner(uint User, uint Group);
