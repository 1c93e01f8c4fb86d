using System.CommandLine;
using SweepStats.Statistics;

namespace SweepStats.Cli;

/// <summary>Options of every command that reads a campaign.</summary>
internal sealed class CampaignOptions
{
    /// <summary>The campaign's folder, as the command line names it.</summary>
    public Argument<string> Campaign { get; } =
        new("CAMPAIGN") { Description = "Folder with floor/, reference/ and covered/<lot>/<specimen>/, or with sweeps.csv" };

    /// <summary>Level of the intervals, above 0.5 and up to 0.9999; null leaves that of campaign.toml.</summary>
    public Option<double?> Confidence { get; } = new("--confidence")
    {
        Description =
        "Level of all intervals, for example 0.95, instead of that of campaign.toml",
        HelpName = "LEVEL",
        CustomParser = NumberText.MaybeReal,
    };

    /// <summary>How many threads work, 1 to 1024; as many as the machine has processors unless given.</summary>
    public Option<int> Threads { get; } = new("--threads")
    {
        Description = "Threads to use; the result does not depend on it",
        HelpName = "N",
        CustomParser = NumberText.Whole,
        DefaultValueFactory = _ => Environment.ProcessorCount,
    };

    /// <summary>Only for commands that draw something.</summary>
    public Option<ulong> Seed { get; } = new("--seed")
    {
        Description = "Seed of the draws that uncertainty budgets are held against and that tell the best specimen",
        HelpName = "N",
        CustomParser = NumberText.Seed,
        DefaultValueFactory = _ => new AnalysisPlan().Seed,
    };

    /// <summary>"text" for a person, "json" for a program.</summary>
    public Option<string> Format { get; } =
        new("--format") { Description = "What to print", HelpName = "text|json", DefaultValueFactory = _ => "text" };

    /// <summary>Whether the console gets nothing but errors; what is written to disk stays the same.</summary>
    public Option<bool> Quiet { get; } = new("--quiet") { Description = "Print nothing but errors" };

    /// <summary>Only for commands whose answer is long: a terminal shows its first screen.</summary>
    public Option<bool> Whole { get; } = new("--verbose")
    {
        Description =
        "Print all of it; a terminal shows 25 lines otherwise, a file or another program gets all in any case",
    };

    /// <summary>Only for commands that show a first screen.</summary>
    public Option<bool> Verbose { get; } =
        new("--verbose") { Description = "Print all of it: every specimen, finding and reason" };

    /// <summary>Whether a file that cannot be read is left out and told of; otherwise it ends the run.</summary>
    public Option<bool> KeepGoing { get; } =
        new("--keep-going") { Description = "Leave out files that cannot be read, and say so in the report" };

    /// <summary>Whether <see cref="ExitCode.Gated"/> tells a shell that the measurement does not pass.</summary>
    public Option<bool> Gate { get; } =
        new("--gate") { Description = "Exit with 1 when the measurement is not trustworthy or the requirement is not met" };

    /// <param name="command">The command.</param>
    /// <param name="gated">Whether it judges a measurement, so that it can be gated.</param>
    /// <param name="campaign">What names the campaigns, where it is not one folder.</param>
    public void AddTo(Command command, bool gated = true, Argument? campaign = null)
    {
        Confidence.Validators.Add(result =>
        {
            if (result.Tokens is [var token]
                && !(double.TryParse(token.Value, System.Globalization.CultureInfo.InvariantCulture, out double level)
                    && level is > 0.5 and <= 0.9999))
            {
                result.AddError($"--confidence {token.Value}: a level lies above 0.5, up to 0.9999, for example 0.95");
            }
        });
        Threads.Validators.Add(result =>
        {
            if (result.Tokens is [var token] && !(int.TryParse(token.Value, out int n) && n is >= 1 and <= 1024))
            {
                result.AddError($"--threads {token.Value}: a number of threads is a whole number from 1 to 1024");
            }
        });
        Format.AcceptOnly("text", "json");
        command.Arguments.Add(campaign ?? Campaign);
        foreach (Option option in (Option[])[Confidence, Threads, Format, Quiet, KeepGoing,
            .. gated ? [Gate] : Array.Empty<Option>()])
        {
            command.Options.Add(option);
        }
    }

    /// <summary>The plan of campaign.toml, with level, threads and seed as the command line has them.</summary>
    public AnalysisPlan Apply(AnalysisPlan plan, ParseResult words) => plan with
    {
        Confidence = words.GetValue(Confidence) is { } level ? new Confidence(level) : plan.Confidence,
        Threads = words.GetValue(Threads),
        Seed = words.GetResult(Seed) is null ? plan.Seed : words.GetValue(Seed),
    };
}
