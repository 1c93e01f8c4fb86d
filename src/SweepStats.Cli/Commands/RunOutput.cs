using System.CommandLine;
using SweepStats.Report;

namespace SweepStats.Cli.Commands;

/// <summary>The options of sweepstats run that say where its report goes and what is in it.</summary>
internal sealed class RunOutput
{
    private readonly Option<string?> _to = ReportOutput.To("Report folder; reports/<campaign> unless given");
    private readonly Option<bool> _png = ReportOutput.Png(), _pdf = ReportOutput.Pdf(), _xlsx = ReportOutput.Xlsx();
    private readonly Option<string?> _charts = ReportOutput.Charts();

    /// <summary>Adds the options to the command; PNG charts and no charts at all exclude each other.</summary>
    public RunOutput(Command command)
    {
        foreach (Option option in (Option[])[_to, _png, _charts, _pdf, _xlsx])
        {
            command.Options.Add(option);
        }

        command.Validators.Add(result =>
        {
            if (!UsageErrors.MissesItsValue(result) && result.GetValue(_png)
                && result.GetValue(_charts) == ReportOutput.NoCharts)
            {
                result.AddError("--png needs charts, and --charts none asks for none; leave one of them out");
            }
        });
    }

    /// <summary>Whether the page is to be printed too.</summary>
    public bool Prints(ParseResult words) => words.GetValue(_pdf);

    /// <summary>The report that is asked for.</summary>
    /// <param name="words">The command line.</param>
    /// <param name="campaign">Folder of the campaign.</param>
    /// <param name="printer">What prints the page; null where it is not printed.</param>
    public RunReport Report(ParseResult words, string campaign, PrintingBrowser? printer)
    {
        string target = words.GetValue(_to) ?? Path.Combine("reports", new DirectoryInfo(campaign).Name);
        var shown = new ReportOptions { Png = words.GetValue(_png), Charts = ReportOutput.Drawn(words.GetValue(_charts)) };
        return new RunReport(target, shown, words.GetValue(_xlsx), printer);
    }
}
