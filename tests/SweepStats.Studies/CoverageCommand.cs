using System.Diagnostics;
using System.Globalization;

namespace SweepStats.Studies;

/// <summary>coverage, coverage-scatter and coverage-beyond: how often intervals hold the truth.</summary>
internal static class CoverageCommand
{
    public const string All = "coverage";
    public const string Scatter = "coverage-scatter";
    public const string Beyond = "coverage-beyond";

    public const string ScatterFile = "coverage.csv";
    public const string BeyondFile = "coverage-beyond.csv";

    private const int Campaigns = 110;

    public static int Run(string which, string folder, string? count)
    {
        int campaigns = Campaigns;
        if (count is not null
            && !(int.TryParse(count, NumberStyles.None, CultureInfo.InvariantCulture, out campaigns) && campaigns > 0))
        {
            return 2;
        }

        var watch = Stopwatch.StartNew();
        if (which != Beyond)
        {
            CoverageTable.Draw(Path.Combine(folder, ScatterFile), CoverageCells.Scatter, campaigns);
        }

        if (which != Scatter)
        {
            CoverageTable.Draw(Path.Combine(folder, BeyondFile), CoverageCells.Beyond, campaigns);
        }

        Console.Error.WriteLine($"{watch.Elapsed.TotalSeconds:0} s");
        if (which == All)
        {
            CoverageDigest.Write(folder);
        }

        return 0;
    }
}
