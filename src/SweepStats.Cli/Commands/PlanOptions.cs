using System.CommandLine;
using System.CommandLine.Parsing;
using SweepStats.Bands;
using SweepStats.Planning;
using SweepStats.Statistics;

namespace SweepStats.Cli.Commands;

/// <summary>The options of sweepstats plan: what is wanted, and what is known where no pilot tells.</summary>
internal sealed class PlanOptions
{
    private const double UsualLooks = 20;

    // Beyond these no bench lies; a typing error does, and what is reckoned from it means nothing.
    private const double MostDb = Requirement.MostDb, MostDeviationDb = 50, LeastWidthDb = 0.001;

    private readonly Option<double?> _halfWidth, _claim, _margin, _probability, _scatter, _placementSpread, _range, _looks;
    private readonly Option<int> _placements, _sweeps, _reference;

    /// <summary>Adds the options to the command; numbers come with the range they may lie in.</summary>
    public PlanOptions(Command command)
    {
        var options = new OptionList(command);
        _halfWidth = Add(options, "--half-width", "DB", "Half-width wanted of the interval at one frequency",
            v => v is >= LeastWidthDb and <= MostDb, $"a half-width lies between {LeastWidthDb} and {MostDb} dB");
        _claim = Add(options, "--claim", "DB", "Shielding to be claimed: SE is at least this much; the pilot's requirement and "
            + "guard band unless given", Requirement.CanAskFor,
            $"a claim lies between {Requirement.LeastDb} and {Requirement.MostDb} dB");
        _margin = Add(options, "--margin", "DB", "How much more than the claim the specimen truly shields; 3 unless given",
            v => v is >= LeastWidthDb and <= MostDb, $"a margin lies between {LeastWidthDb} and {MostDb} dB");
        _probability = Add(options, "--probability", "SHARE",
            "Share of campaigns in which the claim is to succeed; 0.9 unless given", v => v is >= 0.5 and <= 0.99,
            "a share lies between 0.5 and 0.99, for example 0.9");
        _scatter = Add(options, "--scatter", "DB", "Standard deviation from sweep to sweep at one frequency, clear of the "
            + "floor, instead of the pilot's", v => v is >= 0 and <= MostDeviationDb,
            $"a standard deviation lies between 0 and {MostDeviationDb} dB");
        _placementSpread = Add(options, "--placement-spread", "DB",
            "Standard deviation between placements, instead of the pilot's", v => v is >= 0 and <= MostDeviationDb,
            $"a standard deviation lies between 0 and {MostDeviationDb} dB");
        _range = Add(options, "--range", "DB", "Displayed reference less displayed floor, instead of the pilot's",
            v => v is > 0 and <= MostDb, $"a range lies above 0, up to {MostDb} dB");
        _looks = Add(options, "--looks", "N", "Independent looks averaged in a reading; the pilot's, or 20, unless given",
            v => v is >= 1 and <= 1e4, "looks lie between 1 and 10000");
        _placements = Count(options, "--placements", "Placements to reckon with; 0 leaves it to the plan");
        _sweeps = Count(options, "--sweeps", "Sweeps of each placement to reckon with; 0 leaves it to the plan");
        _reference = Count(options, "--reference-sweeps", "Reference sweeps; 0 takes as many as covered sweeps");
        command.Validators.Add(words =>
        {
            long covered = Math.Max(1, Typed(words, _placements)) * Math.Max(1, Typed(words, _sweeps));
            if (covered > FewestSweeps.MostCovered)
            {
                words.AddError($"{_placements.Name} times {_sweeps.Name} is {covered} covered sweeps; at most "
                    + $"{FewestSweeps.MostCovered} are reckoned with");
            }
        });
    }

    /// <summary>
    /// What is known: the pilot's components, with what the words state in their place; null where neither tells the scatter.
    /// </summary>
    public PlanBasis? Basis(ParseResult words, PlanBasis? pilot)
    {
        double? scatter = words.GetValue(_scatter), spread = words.GetValue(_placementSpread), range = words.GetValue(_range),
            looks = words.GetValue(_looks);
        if (pilot is null)
        {
            return scatter is { } db ? PlanBasis.Stated(db, spread, range, looks ?? UsualLooks) : null;
        }

        PlanBasis stated = PlanBasis.Stated(scatter ?? 0, spread, range, looks ?? UsualLooks);
        bool noise = looks is not null || pilot.Noise.IsDefaultOrEmpty;
        return pilot with
        {
            ReferenceDeviationDb = scatter ?? pilot.ReferenceDeviationDb,
            SweepDeviationDb = scatter ?? pilot.SweepDeviationDb,
            PlacementDeviationDb = spread ?? pilot.PlacementDeviationDb,
            RangeDb = range ?? pilot.RangeDb,
            Noise = noise ? stated.Noise : pilot.Noise,
            FloorError = noise ? stated.FloorError : pilot.FloorError,
            FloorFrequencies = noise ? null : pilot.FloorFrequencies,
        };
    }

    /// <summary>What is asked.</summary>
    /// <param name="words">The command line.</param>
    /// <param name="interval">Two-sided level of intervals.</param>
    /// <param name="claims">One-sided level of claims.</param>
    /// <param name="usual">Numbers where none are given.</param>
    /// <param name="asked">
    /// What the pilot's requirement asks for, to be claimed where no claim is given; null without one.
    /// </param>
    public PlanQuestion Question(ParseResult words, Confidence interval, Confidence claims, SweepNumbers usual,
        PilotRequirement? asked)
    {
        double? claim = words.GetValue(_claim);
        int placements = words.GetValue(_placements), sweeps = words.GetValue(_sweeps), reference = words.GetValue(_reference);
        SweepNumbers numbers = usual with
        {
            Placements = placements > 0 ? placements : usual.Placements,
            SweepsEach = sweeps > 0 ? sweeps : usual.SweepsEach,
        };
        var standard = new PlanQuestion { Numbers = usual };
        return standard with
        {
            Confidence = interval,
            ClaimLevel = claims,
            HalfWidthDb = words.GetValue(_halfWidth),
            ClaimDb = claim ?? asked?.ClaimDb,
            FromRequirement = claim is null ? asked : null,
            MarginDb = words.GetValue(_margin) ?? standard.MarginDb,
            Probability = words.GetValue(_probability) ?? standard.Probability,
            Numbers = numbers with
            {
                ReferenceSweeps = reference > 0 ? reference : numbers == usual ? usual.ReferenceSweeps
                : numbers.CoveredSweeps,
            },
            PlacementsFixed = placements > 0,
            SweepsFixed = sweeps > 0,
            ReferenceFixed = reference > 0,
        };
    }

    private static Option<double?> Add(OptionList options, string name, string value, string description,
        Func<double, bool> good, string rule)
    {
        Option<double?> option = options.Add<double?>(name, value, description, null);
        option.Validators.Add(result =>
        {
            if (result.Tokens is [var token] && double.TryParse(token.Value, System.Globalization.CultureInfo.InvariantCulture,
                out double given) && !good(given))
            {
                result.AddError($"{name} {token.Value}: {rule}");
            }
        });
        return option;
    }

    // Asking for the value of an option whose word is no number throws; its own parser tells of that word.
    private static long Typed(CommandResult words, Option<int> option) =>
        words.GetResult(option)?.Tokens is [var token] && int.TryParse(token.Value, out int n) ? n : 0;

    private static Option<int> Count(OptionList options, string name, string description)
    {
        Option<int> option = options.Add(name, "N", description, 0);
        option.Validators.Add(result =>
        {
            if (result.Tokens is [var token] && int.TryParse(token.Value, out int n) && n is < 0 or > FewestSweeps.Most)
            {
                result.AddError($"{name} {token.Value}: a number of repeats lies between 1 and {FewestSweeps.Most}");
            }
        });
        return option;
    }
}
