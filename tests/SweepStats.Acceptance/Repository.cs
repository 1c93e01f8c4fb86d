namespace SweepStats.Acceptance;

/// <summary>The repository this test was built from.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    private static string Find()
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
