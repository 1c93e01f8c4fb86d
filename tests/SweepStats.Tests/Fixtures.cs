using System.Globalization;
using SweepStats.Tests.Architecture;
using Xunit;

namespace SweepStats.Tests;

/// <summary>The tables of fixtures/, found from wherever the tests run.</summary>
internal static class Fixtures
{
    /// <summary>Full path of a file or folder below fixtures/.</summary>
    public static string PathOf(string below) => Path.Combine(SourceTree.Root, "fixtures", below);

    /// <summary>
    /// A table without its comment lines: one row a line, one number a column; cells that are no numbers come as not a number.
    /// </summary>
    public static double[][] Numbers(string below) =>
        [.. Cells(below).Select(row => row.Select(Number).ToArray())];

    /// <summary>The same with the cells as written, header left out.</summary>
    public static string[][] Cells(string below)
    {
        string[][] rows = [.. File.ReadLines(PathOf(below)).Where(line => line.Length > 0 && line[0] != '#').Skip(1)
            .Select(line => line.Split(','))];
        Assert.NotEmpty(rows);
        return rows;
    }

    private static double Number(string cell) =>
        double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) ? value : double.NaN;
}
