using System.CommandLine;
using System.CommandLine.Parsing;

namespace SweepStats.Cli.Commands;

/// <summary>Options of a command, whose numbers read the same whatever the machine's language.</summary>
internal sealed class OptionList(Command command)
{
    /// <summary>Adds an option; null as its standard leaves it without default.</summary>
    public Option<T> Add<T>(string name, string value, string description, T standard)
    {
        var option = new Option<T>(name) { Description = description, HelpName = value };
        option.CustomParser = option switch
        {
            Option<double> => (Func<ArgumentResult, T>)(object)(Func<ArgumentResult, double>)NumberText.Real,
            Option<double?> => (Func<ArgumentResult, T>)(object)(Func<ArgumentResult, double?>)NumberText.MaybeReal,
            Option<double[]> => (Func<ArgumentResult, T>)(object)(Func<ArgumentResult, double[]>)NumberText.Reals,
            Option<int> => (Func<ArgumentResult, T>)(object)(Func<ArgumentResult, int>)NumberText.Whole,
            Option<ulong> => (Func<ArgumentResult, T>)(object)(Func<ArgumentResult, ulong>)NumberText.Seed,
            _ => null,
        };
        if (standard is not null and not Array)
        {
            option.DefaultValueFactory = _ => standard;
        }

        command.Options.Add(option);
        return option;
    }
}
