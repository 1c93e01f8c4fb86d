using System.CommandLine;
using System.CommandLine.Parsing;

namespace SweepStats.Cli;

/// <summary>Options and arguments that take one of a few words: a shell completes them, any other word is refused.</summary>
internal static class WordChoice
{
    /// <summary>Lets an option take these words only, spelled just so.</summary>
    public static void AcceptOnly<T>(this Option<T> option, params string[] words)
    {
        option.CompletionSources.Add(words);
        option.Validators.Add(result => RefuseOthers(result, option.Name, words));
    }

    /// <summary>Lets an argument take these words only, spelled just so.</summary>
    public static void AcceptOnly<T>(this Argument<T> argument, params string[] words)
    {
        argument.CompletionSources.Add(words);
        argument.Validators.Add(result => RefuseOthers(result, argument.Name, words));
    }

    private static void RefuseOthers(SymbolResult result, string name, string[] words)
    {
        foreach (Token token in result.Tokens.Where(token => !words.Contains(token.Value, StringComparer.Ordinal)))
        {
            result.AddError($"'{token.Value}' is no word for {name}; choose {string.Join(", ", words[..^1])} or {words[^1]}");
        }
    }
}
