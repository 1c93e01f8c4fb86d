using System.CommandLine;
using SweepStats.Files.Traces;

namespace SweepStats.Cli.Look;

/// <summary>Options of sweepstats look; those about units and columns do what the keys of campaign.toml and sweeps.csv do.</summary>
internal sealed class LookOptions
{
    private static readonly string FrequencyWords = string.Join(", ", Enum.GetValues<FrequencyUnit>().Select(unit => unit.Symbol()));

    // An antenna factor is no level.
    private static readonly string LevelWords = LevelUnits.Words.Replace(" or ", ", ", StringComparison.Ordinal);

    private readonly Option<string?> _frequencyUnit = new("--frequency-unit") { Description = $"Unit of frequency for files that do not say: {FrequencyWords}", HelpName = "UNIT" };
    private readonly Option<string?> _levelUnit = new("--level-unit") { Description = $"Unit of level for files that do not say: {LevelWords}", HelpName = "UNIT" };
    private readonly Option<string[]> _columns = new("--column") { Description = "Column wanted, by its header, its number from 1, or an S-parameter; may be repeated", HelpName = "COLUMN" };

    public Argument<string[]> Files { get; } = new("FILE") { Description = "Trace files", Arity = ArgumentArity.OneOrMore };

    public Option<string> Format { get; } = new("--format") { Description = "What to print", HelpName = "text|json", DefaultValueFactory = _ => "text" };

    public Option<bool> Quiet { get; } = new("--quiet") { Description = "Print nothing but errors" };

    public Option<bool> NoPlot { get; } = new("--no-plot") { Description = "Leave out the pictures of the traces" };

    public Option<bool> Ascii { get; } = new("--ascii") { Description = "Print plain characters only, for terminals that cannot show braille dots" };

    public void AddTo(Command command)
    {
        Format.AcceptOnlyFromAmong("text", "json");
        Accept(_frequencyUnit, word => FrequencyUnits.Parse(word) is not null, $"the frequency units are {FrequencyWords}");
        Accept(_levelUnit, word => LevelUnits.Parse(word) is not (null or LevelUnit.DecibelsPerMeter), $"the level units are {LevelWords}");
        Accept(_columns, word => !string.IsNullOrWhiteSpace(word), "name a column by its header or its number from 1");
        command.Arguments.Add(Files);
        foreach (Option option in (Option[])[_frequencyUnit, _levelUnit, _columns, NoPlot, Ascii, Format, Quiet])
        {
            command.Options.Add(option);
        }
    }

    public TraceReadOptions Reading(ParseResult words) => new()
    {
        StatedIn = "the command line",
        FrequencyUnit = words.GetValue(_frequencyUnit) is { } frequency ? FrequencyUnits.Parse(frequency) : null,
        LevelUnit = words.GetValue(_levelUnit) is { } level ? LevelUnits.Parse(level) : null,
        Columns = [.. words.GetValue(_columns) ?? []],
    };

    private static void Accept(Option option, Func<string, bool> isKnown, string known) => option.Validators.Add(result =>
    {
        foreach (string word in result.Tokens.Select(token => token.Value).Where(word => !isKnown(word)))
        {
            result.AddError($"{option.Name} {PrintedText.Of(word)}: {known}");
        }
    });
}
