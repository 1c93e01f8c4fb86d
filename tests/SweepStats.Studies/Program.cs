using SweepStats.Studies;
using SweepStats.Studies.Benches;
using SweepStats.Studies.Fuzzing;
using SweepStats.Studies.Specimens;
using SweepStats.Studies.Trust;
using SweepStats.Studies.Values;

// The slow studies behind the pages under reports/. coverage FOLDER [CAMPAIGNS] every cell of the coverage study, drawn anew: two
// tables, then as below; coverage-scatter and coverage-beyond draw one of the tables picture FOLDER coverage.md and coverage.svg
// from the tables that are there trust FOLDER [CAMPAIGNS] false alarms on clean campaigns and faults found, at most so many
// campaigns a cell: two tables, then as below; trust-clean and trust-faults draw one of the tables trust-picture FOLDER trust.md
// and the charts from the tables that are there plan [CAMPAIGNS] planned half-widths and claims beside rehearsed ones, so many
// campaigns a figure decisions CAMPAIGNS POINTS wrong verdicts where the truth lies within a hair of the requirement: a table on
// the console lasting CAMPAIGNS [KIND] sweeps that resemble those before them: a table on the console; lasting-false draws
// independent ones lots-history CAMPAIGNS of these, the lots of two campaigns only lots [CAMPAIGNS] comparisons of lots whose
// truth is known, at most so many campaigns a row: tables on the console; lots-unequal those alone whose lots scatter unequally
// choice [CAMPAIGNS] choices among specimens whose truth is known: tables on the console benches FOLDER [--details] [REPORTS]
// what is said of the campaigns drawn by fixtures/oracles/benches; benches.sh draws them and runs this tolerance-factors the
// factors that CensoredToleranceTable keeps, drawn anew: its rows on the console fuzz FILES SEED [FOLDER [FOUND]] mutated trace
// files, of further seeds in FOLDER ("-" for none); those that fail go to FOUND fuzz-seeds [FOLDER] what comes of the seed files
// unchanged fuzz-big [WORD] big files, of those whose names hold a word: time and memory beside their size values FILE... every
// value of trace files, to be held against fixtures/oracles/trace_values.py
switch (args)
{
    case [CoverageCommand.All or CoverageCommand.Scatter or CoverageCommand.Beyond, _]
        or [CoverageCommand.All or CoverageCommand.Scatter or CoverageCommand.Beyond, _, _]:
        return CoverageCommand.Run(args[0], args[1], args.ElementAtOrDefault(2));
    case ["picture", var folder]:
        CoverageDigest.Write(folder);
        return 0;
    case [TrustCommand.Both or TrustCommand.Clean or TrustCommand.Faults, _]
        or [TrustCommand.Both or TrustCommand.Clean or TrustCommand.Faults, _, _]:
        return TrustCommand.Run(args[0], args[1], args.ElementAtOrDefault(2));
    case ["trust-picture", var folder]:
        TrustDigest.Write(folder);
        return 0;
    case ["plan"]:
        return PlanTable.Print(campaigns: 1000, seed: 1);
    case ["plan", var count] when int.TryParse(count, out int planned) && planned > 0:
        return PlanTable.Print(planned, seed: 1);
    case ["decisions", var count, var points] when int.TryParse(count, out int campaigns) && campaigns > 0
        && int.TryParse(points, out int n) && n > 0:
        DecisionTable.Print(campaigns, n);
        return 0;
    case ["lasting", var count, ..] when int.TryParse(count, out int drawn) && drawn > 0:
        LastingTable.Print(drawn, args.ElementAtOrDefault(2));
        return 0;
    case ["lasting-false", var count] when int.TryParse(count, out int clean) && clean > 0:
        LastingTable.PrintFalse(clean);
        return 0;
    case ["lots"]:
        return LotTables.Print(campaigns: 1000);
    case ["lots-history", var count] when int.TryParse(count, out int campaigns) && campaigns > 0:
        return LotTables.PrintHistory(campaigns);
    case ["lots", var count] when int.TryParse(count, out int campaigns) && campaigns > 0:
        return LotTables.Print(campaigns);
    case ["lots-unequal", var count] when int.TryParse(count, out int unequal) && unequal > 0:
        return LotTables.PrintUnequal(unequal);
    case ["tolerance-factors"]:
        return ToleranceFactors.Print();
    case ["choice"]:
        return ChoiceTables.Print(campaigns: 1000);
    case ["choice", var count] when int.TryParse(count, out int campaigns) && campaigns > 0:
        return ChoiceTables.Print(campaigns);
    case [BenchesCommand.Name, ..]:
        return BenchesCommand.Run(args.AsSpan(1));
    case ["fuzz", ..] when FuzzCommand.Run(args.AsSpan(1)) is { } code:
        return code;
    case ["fuzz-seeds"] or ["fuzz-seeds", _]:
        return FuzzCommand.Seeds(args.ElementAtOrDefault(1));
    case ["fuzz-big"] or ["fuzz-big", _]:
        return BigRun.Start(args.ElementAtOrDefault(1) ?? "");
    case ["fuzz-big-one", var path]:
        return BigRun.One(path);
    case ["values", _, ..]:
        return ValueListing.Print(args.Skip(1));
    default:
        Console.Error.WriteLine("usage: coverage[-scatter|-beyond] FOLDER [CAMPAIGNS] | picture FOLDER | trust[-clean|-faults] "
            + "FOLDER [CAMPAIGNS] | trust-picture FOLDER | plan [CAMPAIGNS] | lasting[-false] CAMPAIGNS [KIND] | lots "
            + "[CAMPAIGNS] | lots-history CAMPAIGNS | lots-unequal CAMPAIGNS | choice [CAMPAIGNS] | tolerance-factors | benches "
            + "FOLDER [--details] [REPORTS] | fuzz FILES SEED [FOLDER [FOUND]] | fuzz-seeds [FOLDER] | fuzz-big [WORD] | "
            + "values FILE...");
        return 2;
}
