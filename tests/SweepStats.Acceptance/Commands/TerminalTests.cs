using SweepStats.Cli;
using SweepStats.Report.Screens;
using SweepStats.Report.Text;
using Xunit;

namespace SweepStats.Acceptance.Commands;

/// <summary>What a person at a console sees: a screen, and colour on one word.</summary>
public sealed class TerminalTests
{
    private const int Screen = 25;

    private static string Demo => Shell.Demo;

    [Theory]
    [InlineData("lots")]
    [InlineData("choose")]
    [InlineData("plan")]
    public void AConsoleShowsOneScreenAndAFileAll(string command)
    {
        string[] watched = Lines(80, colour: false, command, Demo);
        Assert.InRange(watched.Length, 15, Screen);
        Assert.Matches("^Not shown here: [0-9]+ lines?\\. All of it: --verbose$", watched[^1]);
        string[] whole = Lines(80, colour: false, command, Demo, "--verbose");
        Assert.Equal(watched[..^1], whole[..(watched.Length - 1)]);
        string[] file = Lines(null, colour: false, command, Demo);
        Assert.True(file.Length > Screen || command == "plan");
        Assert.DoesNotContain(file, l => l.StartsWith("Not shown", StringComparison.Ordinal));
        Assert.Equal(string.Concat(whole).Replace(" ", "", StringComparison.Ordinal),
            string.Concat(file).Replace(" ", "", StringComparison.Ordinal));
    }

    [Fact]
    public void ThePlansAnswerIsOnTheFirstScreen()
    {
        const string Asked = "plan --scatter 0.3 --placement-spread 0.8 --range 60 --looks 20 --half-width 1 --claim 60";
        string[] shown = Lines(80, colour: false, Asked.Split(' '));
        Assert.InRange(shown.Length, 10, Screen);
        Assert.Contains(shown, l => l.StartsWith("For ±1 dB: ", StringComparison.Ordinal));
        Assert.Contains(shown, l => l.Contains("it succeeds in at least", StringComparison.Ordinal));
    }

    [Fact]
    public void InitShowsItsTableAndTheNextStepOnOneScreen()
    {
        using var scratch = new Files.ScratchFolder();
        foreach (string role in (string[])["floor", "reference", "covered"])
        {
            foreach (string file in Directory.EnumerateFiles(Path.Combine(Demo, role), "*.csv", SearchOption.AllDirectories))
            {
                scratch.With(Path.GetRelativePath(Demo, file), File.ReadAllText(file));
            }
        }

        string[] shown = Lines(80, colour: false, "init", scratch.Path);
        Assert.InRange(shown.Length, 10, Screen);
        Assert.All(shown.Where(l => l.StartsWith("  ", StringComparison.Ordinal)), l => Assert.InRange(l.Length, 1, 80));
        Assert.Contains(shown, l => l.StartsWith("Then: sweepstats check", StringComparison.Ordinal));
    }

    [Fact]
    public void OnlyTheWordOfTheVerdictIsColoured()
    {
        string coloured = string.Join('\n', Lines(80, colour: true, "check", Demo));
        string plain = coloured.Replace("\e[1;33m", "", StringComparison.Ordinal).Replace("\e[0m", "", StringComparison.Ordinal);
        Assert.Equal(string.Join('\n', Lines(80, colour: false, "check", Demo)), plain);
        Assert.Equal(2, coloured.Count(c => c == '\e'));
        Assert.Contains("can be \e[1;33mtrusted\e[0m within", coloured.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.DoesNotContain('\e', string.Join('\n', Lines(null, colour: true, "check", Demo)));
    }

    [Theory]
    [InlineData("Do not rely on this measurement: it shows nothing.",
        "Do not \e[1;31mrely\e[0m on this measurement: it shows nothing.")]
    [InlineData("This measurement can be trusted.", "This measurement can be \e[1;32mtrusted\e[0m.")]
    [InlineData("Trust this measurement no further than it was tested.",
        "\e[1;33mTrust\e[0m this measurement no further than it was tested.")]
    [InlineData("This measurement can be trusted inside its limits.",
        "This measurement can be \e[1;33mtrusted\e[0m inside its limits.")]
    [InlineData("This measurement can be trusted, and every specimen meets.",
        "This measurement can be \e[1;32mtrusted\e[0m, and every specimen meets.")]
    [InlineData("Our cloth can be trusted", "Our cloth can be trusted")]
    public void TheColourSaysWhatTheWordsSay(string line, string shown) => Assert.Equal([shown], ConsoleColour.Of(line, [line]));

    [Theory]
    [InlineData(null, "xterm", true)]
    [InlineData("", "xterm", true)]
    [InlineData("1", "xterm", false)]
    [InlineData("0", "xterm", false)]
    [InlineData(null, "dumb", false)]
    public void WhoWantsNoColourGetsNone(string? noColour, string term, bool wanted)
    {
        string? Read(string name) => name switch { "NO_COLOR" => noColour, "TERM" => term, _ => "there" };
        Assert.Equal(wanted, ConsoleColour.IsWanted(Read));
    }

    [Theory]
    [InlineData(34)]
    [InlineData(16)]
    [InlineData(10)]
    public void LongNamesThatDifferInTheMiddleStayDifferent(int longest)
    {
        string[] names = [.. "abcd".Select(c => new string('x', 38) + c + "é" + new string('y', 40))];
        IReadOnlyList<string> cut = ShortNames.Of(names, longest);
        Assert.Equal(names.Length, cut.Distinct().Count());
        Assert.All(cut, c => Assert.InRange(c.Length, longest - 2, longest + 1));
        Assert.All(cut.Zip("abcd"), c => Assert.Contains(c.Second, c.First));
        string[] mixed = [.. names, "short", new string('x', 38) + "a" + new string('z', 41), names[0]];
        Assert.Equal(6, ShortNames.Of(mixed, longest).Distinct().Count());
    }

    [Fact]
    public void TheyStayDifferentOnTheScreenAndOnTheSheet()
    {
        string Long(string name) => name.Length == 3 ? new string('x', 38) + name[^1] + new string('y', 41) : name;
        AnalysisResult result = Report.Samples.Renamed(Report.Samples.Small with { SpecimensPerLot = 3 }, Long);
        IEnumerable<string> table = FirstScreenWords.FirstScreen(result, 120, ["end"])
            .SkipWhile(l => !l.StartsWith("  Specimen", StringComparison.Ordinal));
        string[] rows = [.. table.Skip(1).Take(3).Select(l => l.Split("  ", StringSplitOptions.RemoveEmptyEntries)[0])];
        Assert.Equal(3, rows.Distinct().Count());
        string[] sheet =
            [.. new Report.Page(result).Tree.Descendants("tbody").First().Elements("tr").Select(r => r.Element("th")!.Value)];
        Assert.Equal(3, sheet.Distinct().Count());
        Report.Page page = new(result);
        int Labels(string chart) =>
            page.Labels(chart).Where(l => l.StartsWith("A/xxx", StringComparison.Ordinal)).Distinct().Count();
        Assert.All(["shielding", "bands", "choice"], chart => Assert.Equal(3, Labels(chart)));
    }

    private static string[] Lines(int? columns, bool colour, params string[] words)
    {
        var output = new StringWriter();
        Assert.Equal(0, CommandLine.Run(words,
            new Terminal(output, TextWriter.Null, Interactive: false) { Columns = columns, Coloured = colour ? output : null }));
        return output.ToString().TrimEnd().Split(Environment.NewLine);
    }
}
