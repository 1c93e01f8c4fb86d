namespace SweepStats.Studies.Fuzzing;

/// <summary>All seeds: the invented ones, and those of a folder.</summary>
internal static class FuzzSeeds
{
    private const int Longest = 8000;
    private const int HeadKept = 6500;
    private const int PerFolder = 12;

    /// <summary>The seeds in a fixed order.</summary>
    /// <param name="folder">
    /// Folder of further files; null for none. Of many files in one folder the first twelve by name are taken.
    /// </param>
    public static FuzzSeed[] All(string? folder) =>
        [.. PlainSeeds.All, .. PreambleSeeds.All, .. EncodedSeeds.All, .. TouchstoneSeeds.All,
            .. folder is null ? [] : Of(folder)];

    private static IEnumerable<FuzzSeed> Of(string folder) =>
        Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Order(StringComparer.Ordinal)
            .GroupBy(Path.GetDirectoryName)
            .SelectMany(files => files.Take(PerFolder))
            .Select(path => new FuzzSeed(Path.GetFileName(path), Shortened(File.ReadAllBytes(path))));

    // Speed needs small seeds; the head of a file holds its settings, the tail its last rows and its end.
    private static byte[] Shortened(byte[] content)
    {
        if (content.Length <= Longest)
        {
            return content;
        }

        int head = Array.LastIndexOf(content, (byte)'\n', HeadKept) + 1;
        int tail = Array.IndexOf(content, (byte)'\n', content.Length - (Longest - HeadKept)) + 1;
        return [.. content.AsSpan(0, head > 0 ? head : HeadKept), .. content.AsSpan(tail)];
    }
}
