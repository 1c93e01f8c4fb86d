using SweepStats.Acceptance.Commands;
using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Faults;

/// <summary>Runs beside no other test: it works in a folder of its own.</summary>
[CollectionDefinition(nameof(OwnWorkingFolder), DisableParallelization = true)]
public sealed class OwnWorkingFolder;

/// <summary>Command lines of known words in any order, with figures and names that no bench has.</summary>
[Collection(nameof(OwnWorkingFolder))]
public sealed class MutatedWords
{
    private static readonly string[] Commands =
    [
        "run", "check", "look", "lots", "choose", "field", "compare", "plan", "receiver", "rehearse", "init",
        "completion", "help",
    ];

    private static readonly string[] Values =
        ["", " ", "0", "-1", "1", "3", "0.5", "0.95", "40", "1e308", "-1e308", "1e-308", "NaN", "Infinity", "2147483647",
            "2147483648", "-2147483648", "99999999999999999999", "1,5", "0x10", "abc", "30MHz", "1GHz", "0Hz", "1e400", "json",
            "text", "all", "none", "--", "-", "-1e5", "\e[31m", "\u202e", "é", "a\nb", "..", ".", "./", "c", "c/floor/f1.csv",
            "file", "loop", "empty", "missing", "missing/deep", "c/sweeps.csv", new string('n', 300), new string('d', 5000),
            "A:3:30MHz-60MHz", "reference:1:3", "433MHz:20", "2026-03-05T14:30", "0,5,10", "csv", "power", "log", "1:2:3:4", ":",
            "=", "--out", "bash"];

    [Fact]
    public void TheyAreObeyedOrRefused()
    {
        using var scratch = new ScratchFolder();
        string before = Environment.CurrentDirectory;
        Environment.CurrentDirectory = scratch.Path;
        try
        {
            Arrange(scratch);
            Attack();
        }
        finally
        {
            Environment.CurrentDirectory = before;
        }
    }

    private static void Arrange(ScratchFolder scratch)
    {
        Shell.Run("rehearse", "c", "--points", "5", "--specimens", "2");
        scratch.With("file", "not a campaign\n").With("c/floor/f1.csv", ScratchFolder.Traces.Plain);
        File.CreateSymbolicLink("loop", "loop");
        Directory.CreateDirectory("empty");
    }

    private static void Attack()
    {
        Dictionary<string, string[]> options = Commands.ToDictionary(command => command,
            command => Shell.Run(command, "--help").Out.Split([' ', ',', '\n'], StringSplitOptions.RemoveEmptyEntries)
            .Where(word => word.StartsWith("--", StringComparison.Ordinal)).Distinct().ToArray());
        var dice = new Random(7);
        // The first run of each compiles it.
        Array.ForEach(Commands[..7], command => Shell.Run(command, "c", "--quiet"));
        var attacks = new Attacks();
        for (int i = 0; i < Attacks.Of(5_000); i++)
        {
            string command = Commands[dice.Next(Commands.Length)];
            string[] words = [command, .. Enumerable.Range(0, dice.Next(6)).SelectMany(_ => Some(options[command], dice))];
            attacks.Try("", words);
        }

        attacks.Hold("words");
    }

    private static string[] Some(string[] options, Random dice)
    {
        string value = Values[dice.Next(Values.Length)];
        return dice.Next(5) switch
        {
            0 => [value],
            1 => ["c"],
            2 when options.Length > 0 => [options[dice.Next(options.Length)]],
            _ when options.Length > 0 => [options[dice.Next(options.Length)], value],
            _ => [value],
        };
    }
}
