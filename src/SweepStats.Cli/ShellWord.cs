using SweepStats.Cli.Look;

namespace SweepStats.Cli;

/// <summary>A word of a command line that a person is told to type, such as the path of a campaign.</summary>
internal static class ShellWord
{
    // What no shell takes apart within a word; letters and digits of any script are plain too.
    private const string PlainOnUnix = "_-./:@%+,=";
    private const string PlainOnWindows = "_-./:\\@+";

    /// <summary>The word as it has to be typed on this machine: quoted where its shell would take it apart.</summary>
    public static string Of(string word) => Of(word, OperatingSystem.IsWindows());

    /// <param name="word">The word.</param>
    /// <param name="windows">Whether the shell is that of Windows, which knows double quotes only.</param>
    public static string Of(string word, bool windows)
    {
        // A path that begins with a hyphen would be read as an option.
        string typed = PrintedText.Of(word.StartsWith('-') ? "./" + word : word);
        if (typed.Length > 0 && typed.All(
            c => char.IsLetterOrDigit(c) || (windows ? PlainOnWindows : PlainOnUnix).Contains(c, StringComparison.Ordinal)))
        {
            return typed;
        }

        // A name on Windows holds no quote; a backslash before the closing one would take its meaning away.
        return windows ? $"\"{typed.TrimEnd('\\')}\"" : $"'{typed.Replace("'", @"'\''", StringComparison.Ordinal)}'";
    }
}
