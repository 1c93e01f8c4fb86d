using System.CommandLine;
using System.Globalization;
using System.Text;
using SweepStats.Bands;
using SweepStats.Cli.Look;
using SweepStats.Files;
using SweepStats.Files.Results;
using SweepStats.Rehearsal;
using SweepStats.Report.Text;
using SweepStats.Sweeps;

namespace SweepStats.Cli.Commands;

/// <summary>sweepstats rehearse: a campaign of known truth.</summary>
internal static class RehearseCommand
{
    /// <summary>The command; it writes the campaign with its truth beside it, in truth.csv.</summary>
    public static Command Create(Terminal terminal)
    {
        var folder = new Argument<string>("FOLDER") { Description = "Folder for the new campaign" };
        var requirement = new Option<double?>("--requirement")
        {
            Description = "Shielding asked for, written into campaign.toml",
            HelpName = "DB",
            CustomParser = NumberText.MaybeReal,
        };
        requirement.Validators.Add(result =>
        {
            if (result.Tokens is [var token] && double.TryParse(token.Value, CultureInfo.InvariantCulture, out double db)
                && !Requirement.CanAskFor(db))
            {
                result.AddError(
                    $"--requirement {token.Value}: a requirement lies between {Requirement.LeastDb} and {Requirement.MostDb} dB");
            }
        });
        var command = new Command("rehearse",
            "Write a campaign whose truth is known, to try a set-up or this program on") { folder, requirement };
        var options = new RehearseOptions(command);
        command.SetAction(words => Run(words, options, new(words.GetValue(folder)!, words.GetValue(requirement)), terminal));
        return command;
    }

    private static int Run(ParseResult words, RehearseOptions options, Target target, Terminal terminal)
    {
        List<string> wrong = [];
        if (options.Plan(words, wrong) is not { } plan)
        {
            wrong.ForEach(w => terminal.Error.WriteLine($"sweepstats: {w}; see 'sweepstats rehearse --help'"));
            return ExitCode.BadInput;
        }

        if (Drawn(plan, terminal) is not { } rehearsed)
        {
            return ExitCode.BadInput;
        }

        ImmutableArray<ReadFault> faults = CampaignWriter.Write(
            target.Folder, rehearsed.Campaign, Settings(plan, rehearsed.Campaign, target.Requirement), TruthTable.Of(rehearsed),
            waits => terminal.Error.WriteLine($"sweepstats: {waits}"));
        if (!faults.IsEmpty)
        {
            faults.ToList().ForEach(terminal.Error.WriteLine);
            return ExitCode.BadInput;
        }

        terminal.Out.WriteLine($"{PrintedText.Of(target.Folder)}: {Printed.Count(rehearsed.Campaign.Sweeps.Length, "sweep")} of "
            + $"{Printed.Count(rehearsed.Grid.Count, "frequency")}; what is true of them stands in truth.csv.");
        terminal.Out.WriteLine($"Analyse it: sweepstats run {ShellWord.Of(target.Folder)}");
        return ExitCode.Done;
    }

    private static RehearsedCampaign? Drawn(RehearsalPlan plan, Terminal terminal)
    {
        try
        {
            return Rehearser.Draw(plan);
        }
        catch (ArgumentException e)
        {
            terminal.Error.WriteLine($"sweepstats rehearse: {e.Message}");
            return null;
        }
    }

    private static string Settings(RehearsalPlan plan, Campaign campaign, double? requirement)
    {
        var text = new StringBuilder();
        text.Append("# A rehearsed campaign: drawn from a model with known truth (truth.csv), not measured.\n");
        text.Append("# This mark goes into every report.\nrehearsed = true\n");
        text.Append(CultureInfo.InvariantCulture,
            $"title = {Quoted(plan.Title)}\naveraging = \"{plan.Averaging.ToString().ToLowerInvariant()}\"\n");
        text.Append("\n# The floor does not move while a rehearsed campaign is drawn, and half of its floor and reference "
            + "sweeps come last.");
        text.Append(Taken("floor", SweepRole.Floor, campaign)).Append(Taken("reference", SweepRole.Reference, campaign));
        text.Append(plan.Cycles.IsEmpty ? string.Empty : $"\n[lots]\nordered_by = \"{RehearsalPlan.CyclesName}\"\n");
        if (requirement is { } db)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n[requirement]\nse_db = {db:R}\n");
        }

        return text.ToString();
    }

    // A single sweep has no half that comes last.
    private static string Taken(string section, SweepRole role, Campaign campaign) =>
        campaign.Sweeps.Count(s => s.Role == role) switch
        {
            0 => "\n",
            1 => $"\n[{section}]\ntaken = \"once\"\n",
            _ => $"\n[{section}]\ntaken = \"before-and-after\"\n",
        };

    // A basic string of TOML: backslash, quote and control characters escaped.
    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (char c in text)
        {
            quoted.Append(c is '"' or '\\' ? $"\\{c}" : char.IsControl(c) ? $"\\u{(int)c:X4}" : c.ToString());
        }

        return quoted.Append('"').ToString();
    }

    /// <summary>The folder to write, and the shielding in dB that its campaign.toml asks for (null for none).</summary>
    private sealed record Target(string Folder, double? Requirement);
}
