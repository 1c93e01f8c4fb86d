using System.Globalization;
using Xunit;

namespace SweepStats.Tests;

/// <summary>Finds the fixtures from wherever the tests run: the folder that holds the solution is above.</summary>
internal static class Fixtures
{
    private static readonly Lazy<string> Root = new(FindRoot);

    /// <summary>Full path of a file or folder below fixtures/.</summary>
    public static string PathOf(string below) => Path.Combine(Root.Value, "fixtures", below);

    /// <summary>A table without its comment lines: one row a line, one number a column; cells that are no numbers come as not a number.</summary>
    public static double[][] Numbers(string below) =>
        [.. Cells(below).Select(row => row.Select(Number).ToArray())];

    /// <summary>The same with the cells as written, header left out.</summary>
    public static string[][] Cells(string below)
    {
        string[][] rows = [.. File.ReadLines(PathOf(below)).Where(line => line.Length > 0 && line[0] != '#').Skip(1).Select(line => line.Split(','))];
        Assert.NotEmpty(rows);
        return rows;
    }

    private static double Number(string cell) =>
        double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) ? value : double.NaN;

    private static string FindRoot()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "SweepStats.sln")))
            {
                return folder.FullName;
            }
        }

        throw new DirectoryNotFoundException($"No folder above {AppContext.BaseDirectory} holds SweepStats.sln; run the tests inside the repository.");
    }
}
