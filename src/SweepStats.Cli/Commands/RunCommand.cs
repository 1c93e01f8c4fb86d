using System.CommandLine;
using SweepStats.Files.Results;
using SweepStats.Files.Spreadsheets;
using SweepStats.Report;
using SweepStats.Report.Fields;
using SweepStats.Report.Screens;
using SweepStats.Report.Text;

namespace SweepStats.Cli.Commands;

/// <summary>sweepstats run: everything, and the report folder.</summary>
internal static class RunCommand
{
    /// <summary>The command; asked for a printed page where no browser prints, it refuses before anything is read.</summary>
    public static Command Create(Terminal terminal)
    {
        var options = new CampaignOptions();
        var command = new Command("run", "Analyse a campaign and write its report");
        options.AddTo(command);
        command.Options.Add(options.Seed);
        command.Options.Add(options.Verbose);
        var output = new RunOutput(command);
        command.SetAction(words =>
        {
            PrintingBrowser? printer = output.Prints(words)
                ? PrintingBrowser.On(Environment.GetEnvironmentVariable("PATH")) : null;
            if (output.Prints(words) && printer is null)
            {
                terminal.Error.WriteLine(PrintingBrowser.Missing);
                return ExitCode.BadInput;
            }

            return Run(words, options, output.Report(words, words.GetValue(options.Campaign)!, printer), terminal);
        });
        return command;
    }

    private static int Run(ParseResult words, CampaignOptions options, RunReport report, Terminal terminal)
    {
        if (ReportFolder.Refusal(report.Target, [words.GetValue(options.Campaign)!]) is { } refusal)
        {
            terminal.Error.WriteLine(refusal);
            return ExitCode.BadInput;
        }

        if (CampaignAnalysis.Of(words, options, terminal) is not { } analysis)
        {
            return ExitCode.BadInput;
        }

        if (!Write(analysis, report, terminal))
        {
            return ExitCode.BadInput;
        }

        if (!words.GetValue(options.Quiet))
        {
            var printing = new Printing(words.GetValue(options.Format)!, report.Target, words.GetValue(options.Verbose));
            Print(analysis, printing, terminal);
        }

        return words.GetValue(options.Gate) && !analysis.Passes ? ExitCode.Gated : ExitCode.Done;
    }

    private static bool Write(CampaignAnalysis analysis, RunReport report, Terminal terminal)
    {
        ReportOptions shown = report.Shown with
        {
            Version = SummaryText.Version,
            InputDigest = InputDigest.Of(analysis.Reading.Inputs),
            Assumptions = analysis.Reading.Assumptions,
            LeftOut = analysis.Reading.LeftOutInBrief,
        };
        ReportTable[] tables = [.. Tables(analysis.Result)];
        return ReportOutput.Write(
            new WantedReport(report.Target, analysis.Result.Plan.Threads)
            {
                Pages = () => ReportBuilder.Build(analysis.Result, shown),
                Tables = report.Workbook ? [.. tables, Workbook(analysis, tables)] : tables,
                Summary = (written, stream) => SummaryText.Write(analysis, written, stream),
                Printer = report.Printer,
            },
            terminal);
    }

    private static ReportTable Workbook(CampaignAnalysis analysis, ReportTable[] tables) =>
        new(Files.Spreadsheets.Workbook.FileName, stream =>
        Files.Spreadsheets.Workbook.Write([.. WorkbookFacts.Of(analysis)],
            tables.Select(table => new WorkbookTable(Path.GetFileNameWithoutExtension(table.Name), table.Write)), stream));

    private static IEnumerable<ReportTable> Tables(AnalysisResult result) =>
    [
        new(ShieldingCsv.FileName, stream => ShieldingCsv.Write(result, stream)),
        new(BandsCsv.FileName, stream => BandsCsv.Write(result, stream)),
        new(BudgetCsv.FileName, stream => BudgetCsv.Write(result, stream)),
        new(LotsCsv.FileName, stream => LotsCsv.Write(result, stream)),
        new(LotFrequenciesCsv.FileName, stream => LotFrequenciesCsv.Write(result, stream)),
        .. result.Trend is null ? Array.Empty<ReportTable>() : [new(TrendCsv.FileName, stream => TrendCsv.Write(result, stream))],
        new(ChoiceCsv.FileName, stream => ChoiceCsv.Write(result, stream)),
        .. PulseWords.AsksForField(result) ? [new(FieldCsv.FileName, stream => FieldCsv.Write(result, stream))]
            : Array.Empty<ReportTable>(),
        new(FindingsCsv.FileName, stream => FindingsCsv.Write(result, stream)),
    ];

    private static void Print(CampaignAnalysis analysis, Printing output, Terminal terminal)
    {
        if (output.Format == "json")
        {
            terminal.Out.WriteLine(File.ReadAllText(Path.Combine(output.Target, SummaryJson.FileName)).TrimEnd());
            return;
        }

        string report = $"Report: {Path.Combine(output.Target, "index.html")}";
        terminal.Write(output.Verbose ? [.. SummaryWords.Summary(analysis.Result), .. analysis.LeftOutLines, report]
            : FirstScreenWords.FirstScreen(analysis.Result, terminal.Columns ?? WrappedLine.Usual,
                [.. analysis.LeftOutInOneLine, report]));
    }

    /// <summary>How the outcome is printed: text or json, the folder of the report, and whether all of it.</summary>
    private sealed record Printing(string Format, string Target, bool Verbose);
}
