namespace SweepStats.Planted.Trials;

/// <summary>Where things lie in the repository that this program was built from.</summary>
internal static class Repository
{
    /// <summary>Its root.</summary>
    public static string Root { get; } = Find();

    /// <summary>This project's folder.</summary>
    private static string Own => Path.Combine(Root, "tests", "SweepStats.Planted");

    /// <summary>What is kept from run to run, and no part of the repository.</summary>
    public static string Bin => Path.Combine(Own, "bin");

    /// <summary>The list of faults that cannot change a result.</summary>
    public static string Equivalents => Path.Combine(Own, "equivalent.txt");

    /// <summary>The study's page.</summary>
    public static string Page => Path.Combine(Root, "reports", "planted", "study.md");

    private static string Core => Path.Combine(Root, "src", "SweepStats");

    /// <summary>The core's files.</summary>
    public static IEnumerable<string> Sources() => Directory.EnumerateFiles(Core, "*.cs", SearchOption.AllDirectories)
        .Where(file => !BelowCore(file).StartsWith("obj/", StringComparison.Ordinal)
            && !BelowCore(file).StartsWith("bin/", StringComparison.Ordinal))
        .Order(StringComparer.Ordinal);

    /// <summary>What the build wrote beside them: usings for all files, and the assembly's attributes.</summary>
    public static IEnumerable<string> BuiltSources() =>
        Directory.EnumerateFiles(Path.Combine(Core, "obj", "Release", "net10.0"), "*.cs");

    /// <summary>Path below src/SweepStats, with forward slashes.</summary>
    public static string BelowCore(string file) => Path.GetRelativePath(Core, file).Replace('\\', '/');

    // The faulty assemblies lie below the repository too: tests look for the fixtures from where they run.
    private static string Find()
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "SweepStats.sln")))
            {
                return at.FullName;
            }
        }

        throw new InvalidOperationException($"SweepStats.sln was not found above {AppContext.BaseDirectory}.");
    }
}
