using System.CommandLine;
using SweepStats.Cli.Look;
using SweepStats.Files.Results;

namespace SweepStats.Cli.Commands;

/// <summary>sweepstats init: a commented campaign.toml and sweeps.csv to fill in.</summary>
internal static class InitCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = new Argument<string>("FOLDER") { Description = "Folder for the new campaign" };
        var command = new Command("init", "Write a commented campaign.toml and sweeps.csv to fill in") { folder };
        command.SetAction(words => Run(words.GetValue(folder)!, terminal));
        return command;
    }

    private static int Run(string folder, Terminal terminal)
    {
        CampaignTemplate.Write(folder);
        terminal.Out.WriteLine($"{PrintedText.Of(folder)} is ready: fill in campaign.toml, put traces into floor/, reference/ and covered/<lot>/<specimen>/ (or list them in sweeps.csv),");
        terminal.Out.WriteLine($"then: sweepstats run {ShellWord.Of(folder)}");
        return ExitCode.Done;
    }
}
