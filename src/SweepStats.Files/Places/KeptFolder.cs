namespace SweepStats.Files.Places;

/// <summary>
/// A folder that was replaced, in which something lies that is not ours: it gets a name that no later run sweeps.
/// </summary>
internal static class KeptFolder
{
    /// <summary>Renames it, and says what it is called now.</summary>
    /// <param name="folder">The hidden folder.</param>
    /// <param name="target">What it was replaced at.</param>
    /// <exception cref="IOException">It cannot be renamed.</exception>
    public static string Of(string folder, string target)
    {
        string kept = $"{target}.kept";
        for (int number = 2; Path.Exists(kept); number++)
        {
            kept = $"{target}.kept-{number}";
        }

        Directory.Move(folder, kept);
        return kept;
    }
}
