using SweepStats.Acceptance.Files;
using SweepStats.Cli;
using Xunit;

namespace SweepStats.Acceptance.Commands;

/// <summary>What is said of words that were mistyped, and how to get help.</summary>
public sealed class UsageTests
{
    [Theory]
    [InlineData("look", "file.csv", "--phase-unit")]
    [InlineData("look", "file.csv", "--column")]
    [InlineData("run", "campaign", "--png", "--charts")]
    [InlineData("plan", "--scatter")]
    [InlineData("rehearse", "campaign", "--points")]
    [InlineData("look", "file.csv", "--phase-column", "1", "--phase-column", "2", "--phase-column")]
    [InlineData("look", "--level-unit", "dB", "file.csv", "--level-unit", "dBm", "--level-unit")]
    public void AnOptionWithoutItsValueIsTold(params string[] words)
    {
        (int code, string output, string error) = Shell.Run(words);
        Assert.Equal((2, ""), (code, output));
        Assert.Contains(words[^1], error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("help")]
    [InlineData("help", "help")]
    [InlineData("help", "--help")]
    public void HelpIsHelp(params string[] words) => Assert.Equal(Shell.Run("--help"), Shell.Run(words));

    [Theory]
    [InlineData("run")]
    [InlineData("check")]
    [InlineData("look")]
    [InlineData("lots")]
    [InlineData("choose")]
    [InlineData("plan")]
    [InlineData("receiver")]
    [InlineData("rehearse")]
    [InlineData("init")]
    public void HelpOfACommandIsItsHelp(string command)
    {
        (int Code, string Out, string Error) help = Shell.Run("help", command);
        Assert.Equal(Shell.Run(command, "--help"), help);
        Assert.Equal((0, ""), (help.Code, help.Error));
        Assert.Matches($@" {command} \[?<", help.Out);
    }

    /// <summary>In the list of commands as in the help of each.</summary>
    [Fact]
    public void HelpShowsInBracketsWhatMayBeLeftOut()
    {
        string[] lines = Shell.Run("--help").Out.Split('\n');
        string[] optional =
            [.. lines.Select(line => line.Trim().Split("  ")[0]).Where(line => line.EndsWith(">]", StringComparison.Ordinal))];
        Assert.Equal(["plan [<CAMPAIGN>]", "receiver [<FILE>]", "guide [<TOPIC>]"], optional);
        // What is said of each stands in one column.
        Assert.Single(lines.SkipWhile(line => !line.StartsWith("Commands", StringComparison.Ordinal)).Skip(1)
            .Where(line => line.Trim().Length > 0)
            .Select(line => line.TrimEnd().LastIndexOf("  ", StringComparison.Ordinal)).Distinct());
    }

    [Theory]
    [InlineData("'chek' is no command; did you mean 'check'? See 'sweepstats --help'", "chek", "x")]
    [InlineData("'chek' is no command; did you mean 'check'? See 'sweepstats --help'", "chek", "--help")]
    [InlineData("'chek' is no command; did you mean 'check'? See 'sweepstats --help'", "help", "chek")]
    [InlineData("'Run' is no command; did you mean 'run'? See 'sweepstats --help'", "Run", "x")]
    [InlineData("'hlp' is no command; did you mean 'help'? See 'sweepstats --help'", "hlp")]
    [InlineData("'measure' is no command; the commands are run, check, look, lots, choose, field, compare, plan, receiver, "
        + "rehearse, init, guide, completion. See 'sweepstats --help'", "measure", "x")]
    [InlineData("'--hepl' is no option; did you mean '--help'? See 'sweepstats --help'", "--hepl")]
    [InlineData("'--confidense' is no option; did you mean '--confidence'? See 'sweepstats run --help'", "run", "x",
        "--confidense", "0.9")]
    [InlineData("'--confidense' is no option; did you mean '--confidence'? See 'sweepstats run --help'", "run", "x",
        "--confidense=0.9")]
    [InlineData("'--confidense' is no option; did you mean '--confidence'? See 'sweepstats run --help'", "run",
        "--confidense", "0.9", "x")]
    [InlineData("'-seed' is no option; did you mean '--seed'? See 'sweepstats run --help'", "run", "-seed", "3", "x")]
    [InlineData("'--scater' is no option; did you mean '--scatter'? See 'sweepstats plan --help'", "plan", "--scater", "3")]
    [InlineData("'--colour' is no option of 'run'. See 'sweepstats run --help'", "run", "x", "--colour")]
    [InlineData("'--force' is no option of 'init'. See 'sweepstats init --help'", "init", "--force")]
    [InlineData("'run' needs its CAMPAIGN; see 'sweepstats run --help'", "run")]
    [InlineData("'campaign' is one word more than 'run' takes; a path with blanks stands in quotes; see 'sweepstats run --help'",
        "run", "my", "campaign")]
    [InlineData("CAMPAIGN is an empty word; see 'sweepstats run --help'", "run", "")]
    [InlineData("CAMPAIGN is an empty word; see 'sweepstats lots --help'", "lots", "")]
    [InlineData("CAMPAIGN is an empty word; see 'sweepstats lots --help'", "lots", "", "")]
    [InlineData("FOLDER is an empty word; see 'sweepstats rehearse --help'", "rehearse", "")]
    [InlineData("FOLDER is an empty word; see 'sweepstats init --help'", "init", " ")]
    [InlineData("--out is followed by an empty word; see 'sweepstats run --help'", "run", "x", "--out", "")]
    [InlineData("'weather' is no word for TOPIC; choose campaign, report, numbers, benches, files, lots, washes, pulse, plan or "
        + "receiver; see 'sweepstats guide --help'", "guide", "weather")]
    [InlineData("'some' is no word for --charts; choose none, summary or all; see 'sweepstats run --help'", "run", "x",
        "--charts", "some")]
    [InlineData("'xml' is no word for --format; choose text or json; see 'sweepstats check --help'", "check", "x",
        "--format", "xml")]
    public void AMistypedWordIsToldWithTheNearestOne(string said, params string[] words)
    {
        (int code, string output, string error) = Shell.Run(words);
        Assert.Equal((2, "", "sweepstats: " + said), (code, output, error.TrimEnd()));
    }

    [Fact]
    public void WhatIsWrongBesideAMistypedOptionIsSaidToo()
    {
        string[] lines = Shell.Run("rehearse", "x", "--ponits", "3", "--seed", "x").Error.TrimEnd().Split(Environment.NewLine);
        Assert.Equal(2, lines.Length);
        Assert.Contains("did you mean '--points'?", lines[0], StringComparison.Ordinal);
        Assert.Contains("--seed x: a seed is a whole number", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public void BehindADoubleHyphenAnythingIsAPath()
    {
        using var scratch = new ScratchFolder();
        (int code, _, string error) = Shell.Run("check", "--", "--no-such-campaign");
        Assert.Equal(2, code);
        Assert.StartsWith("--no-such-campaign: there is no such folder", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("autumn/lots-1_a.b", "autumn/lots-1_a.b", "autumn/lots-1_a.b")]
    [InlineData("Prüfung", "Prüfung", "Prüfung")]
    [InlineData("my campaign", "'my campaign'", "\"my campaign\"")]
    [InlineData("it's", @"'it'\''s'", "\"it's\"")]
    [InlineData("$HOME;rm", "'$HOME;rm'", "\"$HOME;rm\"")]
    [InlineData(@"C:\my lots\", @"'C:\my lots\'", "\"C:\\my lots\"")]
    [InlineData(@"C:\lots", @"'C:\lots'", @"C:\lots")]
    [InlineData("-x", "./-x", "./-x")]
    [InlineData("~", "'~'", "\"~\"")]
    public void APathIsQuotedAsItsShellNeedsIt(string path, string unix, string windows) =>
        Assert.Equal((unix, windows), (ShellWord.Of(path, windows: false), ShellWord.Of(path, windows: true)));

    [Fact]
    public void CommandsToTypeQuoteThePath()
    {
        using var scratch = new ScratchFolder();
        string folder = Path.Combine(scratch.Path, "my campaign");
        Assert.EndsWith($"then: sweepstats run {ShellWord.Of(folder)}", Shell.Run("init", folder).Out.TrimEnd(),
            StringComparison.Ordinal);
        Assert.Contains("my campaign", ShellWord.Of(folder), StringComparison.Ordinal);
        string drawn = Path.Combine(scratch.Path, "drawn $1");
        Assert.EndsWith($"Analyse it: sweepstats run {ShellWord.Of(drawn)}",
            Shell.Run("rehearse", drawn, "--points", "3").Out.TrimEnd(), StringComparison.Ordinal);
        Assert.EndsWith($"name files, e.g. {ShellWord.Of(drawn)}/*.csv", Shell.Run("look", drawn).Error.TrimEnd(),
            StringComparison.Ordinal);
    }
}
