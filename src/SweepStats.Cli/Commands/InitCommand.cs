using System.CommandLine;
using SweepStats.Cli.Init;
using SweepStats.Cli.Look;
using SweepStats.Files.Proposals;
using SweepStats.Files.Results;

namespace SweepStats.Cli.Commands;

/// <summary>
/// sweepstats init: campaign.toml and sweeps.csv, to fill in for a new campaign, or guessed for a folder of trace files.
/// </summary>
internal static class InitCommand
{
    /// <summary>The command; it never overwrites, and it guesses only where the folder holds trace files.</summary>
    public static Command Create(Terminal terminal)
    {
        var folder =
            new Argument<string>("FOLDER") { Description = "Folder for the new campaign, or one that holds trace files" };
        var command = new Command("init",
            "Write campaign.toml and sweeps.csv: to fill in, or guessed from the trace files of a folder") { folder };
        command.SetAction(words => Run(words.GetValue(folder)!, terminal));
        return command;
    }

    private static int Run(string folder, Terminal terminal)
    {
        CampaignTemplate.RefuseOverwriting(folder);
        if (FolderProposal.Of(folder) is { } proposal)
        {
            ProposedManifest manifest = CampaignTemplate.Write(folder, proposal);
            terminal.WriteTable(new ProposalText(proposal, manifest).Lines(folder));
            return ExitCode.Done;
        }

        CampaignTemplate.Write(folder);
        terminal.Out.WriteLine($"{PrintedText.Of(folder)} is ready: fill in campaign.toml, put traces into floor/, reference/ "
            + "and covered/<lot>/<specimen>/ (or list them in sweeps.csv),");
        terminal.Out.WriteLine($"then: sweepstats run {ShellWord.Of(folder)}");
        return ExitCode.Done;
    }
}
