namespace SweepStats.Studies.Fuzzing;

/// <summary>A file that is big on purpose.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Write">Writes it.</param>
internal sealed record BigFile(string Name, Action<Stream> Write);
