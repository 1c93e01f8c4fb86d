using SweepStats.Studies;

// The slow studies behind the figures of DEVELOPERS.md.
//   coverage FOLDER [CAMPAIGNS]    every cell of the coverage study, drawn anew: coverage.csv, then as below
//   picture FOLDER                 coverage.md and coverage.svg from the coverage.csv that is there
switch (args)
{
    case ["coverage", var folder]:
        CoverageTable.Draw(folder, campaigns: 110);
        CoverageDigest.Write(folder);
        return 0;
    case ["coverage", var folder, var count] when int.TryParse(count, out int campaigns) && campaigns > 0:
        CoverageTable.Draw(folder, campaigns);
        CoverageDigest.Write(folder);
        return 0;
    case ["picture", var folder]:
        CoverageDigest.Write(folder);
        return 0;
    default:
        Console.Error.WriteLine("usage: coverage FOLDER [CAMPAIGNS] | picture FOLDER");
        return 2;
}
