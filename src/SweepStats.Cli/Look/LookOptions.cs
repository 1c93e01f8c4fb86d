using System.CommandLine;
using SweepStats.Files.Traces;

namespace SweepStats.Cli.Look;

/// <summary>
/// Options of sweepstats look; those about units and columns do what the keys of campaign.toml and sweeps.csv do.
/// </summary>
internal sealed class LookOptions
{
    private static readonly string FrequencyWords =
        string.Join(", ", Enum.GetValues<FrequencyUnit>().Select(unit => unit.Symbol()));

    // An antenna factor is no level.
    private static readonly string LevelWords = LevelUnits.Words.Replace(" or ", ", ", StringComparison.Ordinal);

    private readonly Option<string?> _frequencyUnit = new("--frequency-unit")
    {
        Description =
        $"Unit of frequency for files that do not say: {FrequencyWords}",
        HelpName = "UNIT",
    };
    private readonly Option<string?> _levelUnit =
        new("--level-unit") { Description = $"Unit of level for files that do not say: {LevelWords}", HelpName = "UNIT" };
    private readonly Option<string[]> _columns = new("--column")
    {
        Description =
        "Column wanted, by its header, its number from 1, or an S-parameter; may be repeated",
        HelpName = "COLUMN",
    };

    private readonly Option<string?> _frequencyColumn = Column("--frequency-column", "Column of frequencies");
    private readonly Option<string?> _phaseColumn = Column("--phase-column", "Column with the phase of the one --column");
    private readonly Option<string?> _phaseUnit =
        new("--phase-unit") { Description = "Unit of the phase where its column does not say", HelpName = "deg|rad" };
    private readonly Option<string?> _realColumn =
        Column("--real-column", "Column with the real part of a complex ratio, whose magnitude is the level");
    private readonly Option<string?> _imaginaryColumn = Column("--imaginary-column", "Column with its imaginary part");

    /// <summary>Trace files to look at, one or more, as the command line names them.</summary>
    public Argument<string[]> Files { get; } = new("FILE") { Description = "Trace files", Arity = ArgumentArity.OneOrMore };

    /// <summary>"text" for a person, "json" for a program.</summary>
    public Option<string> Format { get; } =
        new("--format") { Description = "What to print", HelpName = "text|json", DefaultValueFactory = _ => "text" };

    /// <summary>File for every reading, .json or .csv; null where none is to be written.</summary>
    public Option<string?> Values { get; } = new("--values")
    {
        Description =
        "Write every reading as it was understood to this file; its name ends in .json or .csv",
        HelpName = "OUT",
    };

    /// <summary>Whether the console gets nothing but errors.</summary>
    public Option<bool> Quiet { get; } = new("--quiet") { Description = "Print nothing but errors" };

    /// <summary>Whether the text comes without pictures of the traces.</summary>
    public Option<bool> NoPlot { get; } = new("--no-plot") { Description = "Leave out the pictures of the traces" };

    /// <summary>Whether text and pictures keep to plain characters.</summary>
    public Option<bool> Ascii { get; } =
        new("--ascii") { Description = "Print plain characters only, for terminals that cannot show braille dots" };

    /// <summary>Adds the options to the command; units, columns and their pairings that cannot be meant are refused.</summary>
    public void AddTo(Command command)
    {
        AcceptKnown();
        command.Arguments.Add(Files);
        Option[] all =
            [_frequencyUnit, _levelUnit, _columns, _frequencyColumn, _phaseColumn, _phaseUnit, _realColumn, _imaginaryColumn,
                Values, NoPlot, Ascii, Format, Quiet];
        foreach (Option option in all)
        {
            command.Options.Add(option);
        }

        command.Validators.Add(result =>
        {
            foreach (KeyConflict conflict in result.Errors.Any() || UsageErrors.MissesItsValue(result) ? []
                : KeyConflict.Of(Reading(result.GetValue, result.GetValue)))
            {
                result.AddError(AsOptions($"{conflict.Problem}; {conflict.Remedy}"));
            }
        });
    }

    private void AcceptKnown()
    {
        Format.AcceptOnly("text", "json");
        Accept(_frequencyUnit, word => FrequencyUnits.Parse(word) is not null, $"the frequency units are {FrequencyWords}");
        Accept(_levelUnit, word => LevelUnits.Stated(word) is not null, $"the level units are {LevelWords}");
        Accept(Values, ValuesPlace.IsKnown,
            "the name of the file ends in .json or .csv, which says how the readings are written");
        foreach (Option column in (Option[])[_columns, _frequencyColumn, _phaseColumn, _realColumn, _imaginaryColumn])
        {
            Accept(column, word => !string.IsNullOrWhiteSpace(word), "name a column by its header or its number from 1");
        }

        Accept(_phaseUnit, word => word is "deg" or "rad", "the phase units are deg and rad");
    }

    /// <summary>What the command line says of units and columns, as a reader of traces takes it.</summary>
    public TraceReadOptions Reading(ParseResult words) => Reading(words.GetValue, words.GetValue);

    private TraceReadOptions Reading(Func<Option<string?>, string?> word, Func<Option<string[]>, string[]?> several) => new()
    {
        StatedIn = "the command line",
        ColumnsOnCommandLine = true,
        FrequencyUnit = word(_frequencyUnit) is { } frequency ? FrequencyUnits.Parse(frequency) : null,
        IsOwnFrequencyUnit = word(_frequencyUnit) is not null,
        LevelUnit = word(_levelUnit) is { } level ? LevelUnits.Stated(level) : null,
        IsOwnLevelUnit = word(_levelUnit) is not null,
        Columns = [.. several(_columns) ?? []],
        FrequencyColumn = word(_frequencyColumn),
        PhaseColumn = word(_phaseColumn),
        PhaseUnit = word(_phaseUnit) switch { "deg" => PhaseUnit.Degrees, "rad" => PhaseUnit.Radians, _ => null },
        RealColumn = word(_realColumn),
        ImaginaryColumn = word(_imaginaryColumn),
    };

    private static Option<string?> Column(string name, string description) =>
        new(name) { Description = description + ", by its header or its number from 1", HelpName = "COLUMN" };

    // The keys of campaign.toml are these options with other hyphens.
    private static string AsOptions(string text)
    {
        foreach (string key in (string[])["real_column", "imaginary_column", "phase_column", "phase_unit", "level_unit"])
        {
            text = text.Replace(key, "--" + key.Replace('_', '-'), StringComparison.Ordinal);
        }

        return text.Replace("level_column", "--column", StringComparison.Ordinal);
    }

    private static void Accept(Option option, Func<string, bool> isKnown, string known) => option.Validators.Add(result =>
    {
        foreach (string word in result.Tokens.Select(token => token.Value).Where(word => !isKnown(word)))
        {
            result.AddError($"{option.Name} {PrintedText.Of(word)}: {known}");
        }
    });
}
