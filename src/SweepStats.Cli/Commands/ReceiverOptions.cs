using System.CommandLine;
using System.Globalization;
using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Receivers;
using SweepStats.Statistics;

namespace SweepStats.Cli.Commands;

/// <summary>The options of sweepstats receiver: what is asked, and how it is printed.</summary>
internal sealed class ReceiverOptions
{
    private const double LargestRatio = 2;

    private readonly Option<double?> _confidence, _claim, _within;
    private readonly Option<string> _format = new("--format")
    {
        Description = "What to print",
        HelpName = "text|json",
        DefaultValueFactory = _ => "text",
    };
    private readonly Option<bool> _quiet = new("--quiet") { Description = "Print nothing but errors" };
    private readonly Option<bool> _verbose = new("--verbose") { Description = "Print all of it, however long" };
    private readonly Option<bool> _gate = new("--gate") { Description = "Exit with 1 when the claim is not supported" };
    private readonly Option<bool> _png = ReportOutput.Png();
    private readonly Option<string?> _to = ReportOutput.To("Folder for tables and a chart; none is written unless given");

    /// <summary>Adds the options to the command; numbers come with the range they may lie in.</summary>
    public ReceiverOptions(Command command)
    {
        var options = new OptionList(command);
        _claim = Add(options, "--claim", "DB", "Shielding to be claimed: SE is at least this much",
            new NumberRule(Requirement.CanAskFor, $"a claim lies between {Requirement.LeastDb} and {Requirement.MostDb} dB"));
        _confidence = Add(options, "--confidence", "LEVEL", "Level of interval, bounds and claim; 0.95 unless given",
            new NumberRule(v => v is > 0.5 and <= 0.9999, "a level lies above 0.5, up to 0.9999, for example 0.95"));
        _within = Add(options, "--within", "RATIO",
            "Highest over lowest frequency of stations that are taken to meet the same shielding; "
                + $"{ReceiverQuestion.UsualRatio} unless given, 1 keeps frequencies apart",
            new NumberRule(v => v is >= 1 and <= LargestRatio, $"a ratio lies between 1 and {LargestRatio}"));
        _format.AcceptOnly("text", "json");
        foreach (Option option in (Option[])[_to, _png, _format, _quiet, _verbose, _gate])
        {
            command.Options.Add(option);
        }

        ReportOutput.NeedFolder(command, _png, _to);
    }

    /// <summary>What is asked of the observations: 95 % and no claim unless given.</summary>
    public ReceiverQuestion Question(ParseResult words) => new()
    {
        Confidence = words.GetValue(_confidence) is { } level ? new Confidence(level) : Confidence.NinetyFive,
        Claim = words.GetValue(_claim) is { } claim ? new Decibels(claim) : null,
        Ratio = words.GetValue(_within) ?? ReceiverQuestion.UsualRatio,
    };

    /// <summary>Folder for tables and chart; null where none is to be written.</summary>
    public string? Target(ParseResult words) => words.GetValue(_to);

    /// <summary>Whether the chart is written as PNG too; only together with a folder.</summary>
    public bool Png(ParseResult words) => words.GetValue(_png);

    /// <summary>Whether the console gets JSON in place of text.</summary>
    public bool IsJson(ParseResult words) => words.GetValue(_format) == "json";

    /// <summary>Whether the console gets nothing but errors.</summary>
    public bool IsQuiet(ParseResult words) => words.GetValue(_quiet);

    /// <summary>Whether all of the text is printed, and not the first screen alone.</summary>
    public bool IsVerbose(ParseResult words) => words.GetValue(_verbose);

    /// <summary>Whether the exit code says that the claim is not supported; needs a claim.</summary>
    public bool IsGated(ParseResult words) => words.GetValue(_gate);

    internal static Option<double?> Add(OptionList options, string name, string value, string description, NumberRule rule)
    {
        Option<double?> option = options.Add<double?>(name, value, description, null);
        option.Validators.Add(result =>
        {
            // A decimal comma is no number here, and the parser says so: read as thousands it would lie out of range.
            if (result.Tokens is [var token]
                && double.TryParse(token.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double given)
                && !rule.Holds(given))
            {
                result.AddError($"{name} {token.Value}: {rule.Text}");
            }
        });
        return option;
    }
}

/// <summary>What a number of an option has to keep to.</summary>
/// <param name="Holds">Whether it does.</param>
/// <param name="Text">The rule, for a person.</param>
internal sealed record NumberRule(Func<double, bool> Holds, string Text);
