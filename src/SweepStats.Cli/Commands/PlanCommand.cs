using System.CommandLine;
using SweepStats.Planning;
using SweepStats.Report.Plans;
using SweepStats.Statistics;

namespace SweepStats.Cli.Commands;

/// <summary>
/// sweepstats plan: how many sweeps and placements and how much range a result needs, before the day at the bench.
/// </summary>
internal static class PlanCommand
{
    /// <summary>The command; it needs a pilot campaign or a stated scatter, and judges nothing, so it has no gate.</summary>
    public static Command Create(Terminal terminal)
    {
        var options = new CampaignOptions();
        options.Campaign.Arity = ArgumentArity.ZeroOrOne;
        options.Campaign.Description = "Folder of a pilot campaign; without one, --scatter says what is known";
        var command = new Command("plan", "Say how many sweeps and placements and how much range a result needs");
        options.AddTo(command, gated: false);
        command.Options.Add(options.Whole);
        var asked = new PlanOptions(command);
        command.SetAction(words => Run(words, options, asked, terminal));
        return command;
    }

    private static int Run(ParseResult words, CampaignOptions options, PlanOptions asked, Terminal terminal)
    {
        CampaignAnalysis? analysis = null;
        if (words.GetValue(options.Campaign) is not null)
        {
            analysis = CampaignAnalysis.Of(words, options, terminal);
            if (analysis is null)
            {
                return ExitCode.BadInput;
            }
        }

        AnalysisResult? pilot = analysis?.Result;
        if (asked.Basis(words, Measured(pilot)) is not { } basis)
        {
            terminal.Error.WriteLine(pilot is null
                ? "sweepstats: plan needs a pilot campaign, or --scatter; see 'sweepstats plan --help'"
                : $"{words.GetValue(options.Campaign)}: the reference is a single sweep, is clipped everywhere, or stands "
                    + "nowhere 15 dB over the floor, so it shows no scatter; take it again, or state --scatter");
            return ExitCode.BadInput;
        }

        bool shown = !words.GetValue(options.Quiet);
        SweepPlan plan = Planned(basis, Question(words, asked, basis, pilot, Level(words, options, pilot)), terminal, shown);
        if (shown)
        {
            Print(plan, analysis, words.GetValue(options.Format) == "json", words.GetValue(options.Whole), terminal);
        }

        return ExitCode.Done;
    }

    private static PlanBasis? Measured(AnalysisResult? pilot) => pilot is null ? null
        : PilotComponents.Of(pilot.Campaign, pilot.Floor, pilot.Plan.Uncertainties, pilot.SerialCorrelation);

    private static PlanQuestion Question(ParseResult words, PlanOptions asked, PlanBasis basis, AnalysisResult? pilot,
        Confidence level)
    {
        SweepNumbers usual = UsualNumbers.For(basis, pilot is null ? null : UsualNumbers.OfPilot(pilot.Campaign));
        PilotRequirement? requirement = pilot is null ? null : PilotRequirement.Of(pilot.Curves, pilot.Plan.Rule);
        return asked.Question(words, level, pilot?.Plan.Rule?.Level ?? level, usual, requirement);
    }

    private static SweepPlan Planned(PlanBasis basis, PlanQuestion question, Terminal terminal, bool shown)
    {
        using var bar = new ProgressBar(terminal, shown);
        return SweepPlanner.Of(basis, question, bar.Part("planning", 0, 1));
    }

    private static Confidence Level(ParseResult words, CampaignOptions options, AnalysisResult? pilot) =>
        pilot?.Plan.Confidence
            ?? (words.GetValue(options.Confidence) is { } level ? new Confidence(level) : Confidence.NinetyFive);

    private static void Print(SweepPlan plan, CampaignAnalysis? pilot, bool json, bool whole, Terminal terminal)
    {
        if (json)
        {
            terminal.Out.WriteLine(PlanJson.Of(plan, pilot));
            return;
        }

        terminal.WriteFirst([.. PlanWords.Plan(plan, pilot?.Result), .. pilot?.LeftOutLines ?? []], whole);
    }
}
