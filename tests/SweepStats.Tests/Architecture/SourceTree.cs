namespace SweepStats.Tests.Architecture;

/// <summary>The source files of the repository this test was built from.</summary>
internal static class SourceTree
{
    public static string Root { get; } = FindRoot();

    public static IEnumerable<string> Files(string folder) =>
        Directory.EnumerateFiles(Path.Combine(Root, folder), "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}")
                && !f.Contains($"{Path.DirectorySeparatorChar}bin{Path.DirectorySeparatorChar}"))
            .Order(StringComparer.Ordinal);

    private static string FindRoot()
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "SweepStats.sln")))
            {
                return at.FullName;
            }
        }

        throw new InvalidOperationException("The tests must run inside the repository: SweepStats.sln was not found above "
            + AppContext.BaseDirectory);
    }
}
