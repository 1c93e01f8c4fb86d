using System.CommandLine;
using System.CommandLine.Parsing;
using SweepStats.Cli.Look;
using SweepStats.Files;

namespace SweepStats.Cli;

/// <summary>What is wrong with the words of a command line, each with what was probably meant.</summary>
internal static class UsageErrors
{
    private const string Help = "help";

    /// <summary>One sentence an error; none where the words make sense.</summary>
    public static IEnumerable<string> Of(ParseResult parsed)
    {
        Command command = parsed.CommandResult.Command;
        string[] options = [.. UnknownOptions(parsed)];
        if (options.Length == 0 && command is RootCommand root && parsed.UnmatchedTokens is [var word, ..])
        {
            return [$"{NoCommand(root, word)} See 'sweepstats --help'"];
        }

        // Behind an option that is not known, its value and what seems to be missing are its doing too.
        IEnumerable<ParseError> others = parsed.Errors.Where(e => options.Length == 0 || e.SymbolResult is OptionResult);
        string name = command is RootCommand ? "" : command.Name + " ";
        return
        [
            .. options.Select(option => $"{NoOption(command, option)} See 'sweepstats {name}--help'"),
            .. others.Select(e => Message(e, parsed)).Concat(Empty(parsed.CommandResult))
                .Select(m => $"{m}; see 'sweepstats {name}--help'").Distinct(),
        ];
    }

    /// <summary>
    /// Whether an option has no value, or more than one where it takes one: asking for it throws, and the library says by itself
    /// what is wrong.
    /// </summary>
    public static bool MissesItsValue(CommandResult words) =>
        words.Children.OfType<OptionResult>().Any(option => !option.Implicit
            && (option.Tokens.Count < option.Option.Arity.MinimumNumberOfValues
                || option.Tokens.Count > option.Option.Arity.MaximumNumberOfValues));

    /// <summary>"'chek' is no command; did you mean 'check'?"</summary>
    private static string NoCommand(RootCommand root, string word)
    {
        string[] known = [.. root.Subcommands.Select(c => c.Name)];
        return Spelling.Nearest(word, [.. known, Help]) is { } near
            ? $"'{PrintedText.Of(word)}' is no command; did you mean '{near}'?"
            : $"'{PrintedText.Of(word)}' is no command; the commands are {string.Join(", ", known)}.";
    }

    private static string NoOption(Command command, string option)
    {
        string[] known = [.. command.Options.Select(o => o.Name), "--help"];
        // By what stands behind the hyphens, so that -seed finds --seed.
        string? near = Spelling.Nearest(option.TrimStart('-'), known.Select(k => k.TrimStart('-')));
        return near is null
            ? $"'{PrintedText.Of(option)}' is no option of {(command is RootCommand ? "sweepstats" : $"'{command.Name}'")}."
            : $"'{PrintedText.Of(option)}' is no option; did you mean '--{near}'?";
    }

    // A mistyped option is taken for an argument where the command has room for one. Behind a double hyphen anything is an
    // argument.
    private static IEnumerable<string> UnknownOptions(ParseResult parsed)
    {
        HashSet<Token> values = [.. parsed.CommandResult.Children.OfType<OptionResult>().SelectMany(o => o.Tokens)];
        return parsed.Tokens.TakeWhile(t => t.Type != TokenType.DoubleDash)
            .Where(t => t.Type == TokenType.Argument && !values.Any(v => ReferenceEquals(v, t)) && IsOption(t.Value)
                && !Path.Exists(t.Value))
            .Select(t => t.Value.Split('=', ':')[0]);
    }

    private static bool IsOption(string word) =>
        word.Length > 1 && word[0] == '-' && char.IsLetter(word.TrimStart('-').FirstOrDefault());

    // A variable of a shell that is not set leaves an empty word, which names no folder and states nothing.
    private static IEnumerable<string> Empty(CommandResult command)
    {
        foreach (SymbolResult result in command.Children.Where(
            r => r.Tokens.Any(t => string.IsNullOrWhiteSpace(t.Value)) && !r.Errors.Any()))
        {
            yield return result switch
            {
                OptionResult option => $"{option.Option.Name} is followed by an empty word",
                ArgumentResult argument => $"{argument.Argument.Name} is an empty word",
                _ => "there is an empty word",
            };
        }
    }

    private static string Message(ParseError error, ParseResult parsed)
    {
        if (error.SymbolResult is ArgumentResult { Tokens.Count: 0, Parent: CommandResult } missing)
        {
            return $"'{parsed.CommandResult.Command.Name}' needs its {missing.Argument.Name}";
        }

        string message = PrintedText.Of(error.Message.ReplaceLineEndings(" ").Replace('\t', ' ')).TrimEnd('.');
        string? extra = parsed.UnmatchedTokens.FirstOrDefault(t => error.Message.Contains($"'{t}'", StringComparison.Ordinal));
        return extra is null || error.SymbolResult is OptionResult
            ? message
            : $"'{PrintedText.Of(extra)}' is one word more than '{parsed.CommandResult.Command.Name}' takes; a path with blanks "
                + "stands in quotes";
    }
}
