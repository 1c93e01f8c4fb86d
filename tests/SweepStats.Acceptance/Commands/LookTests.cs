using System.Globalization;
using Xunit;

namespace SweepStats.Acceptance.Commands;

public sealed class LookTests
{
    private const string Preamble = "RBW,10 kHz\nDetector,Sample\nDate,2026-10-05\n\n";

    [Fact]
    public void ATraceIsOneLineWithItsEndsAndItsRange()
    {
        using LookFolder folder =
            new LookFolder().With("a.csv", "frequency_hz,level_dbm\n433920000,-100.25\n434000000,-71\n1234567890.5,-80\n");
        (int code, string output, string error) = folder.Look("a.csv", "--no-plot");
        string[] lines = output.ReplaceLineEndings("\n").Split('\n');
        Assert.Equal((0, ""), (code, error));
        Assert.Equal(folder.Path("a.csv"), lines[0]);
        Assert.Equal("level_dbm level dBm 3 433.92 MHz 1.2345678905 GHz -100.25 -80 -100.25 -71",
            string.Join(' ', lines[2].Split(' ', StringSplitOptions.RemoveEmptyEntries)));
        Assert.Equal("  settings: RBW not stated, attenuation not stated, detector not stated", lines[3]);
        Assert.Equal("", string.Join("", lines[4..]));
    }

    [Fact]
    public void SettingsAndDateAreSaidInOneLine()
    {
        using LookFolder folder = new LookFolder().With("a.csv", Preamble + LookFolder.Ramp);
        Assert.Contains("settings: RBW 10 kHz, attenuation not stated, detector Sample; taken 2026-10-05" + Environment.NewLine,
            folder.Look("a.csv").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void ATraceWithSettingsOfItsOwnSaysSo()
    {
        using LookFolder folder = new LookFolder().With("a.csv",
            "RBW,9000,9000,Hz\nDetector,Peak,RMS\nY Axis Units,dBm\nTrace Name,North,South\nX Axis "
                + "Units,Hz\nDATA\n1000,-50,-60\n2000,-51,-61\n");
        string output = folder.Look("a.csv").Out.ReplaceLineEndings("\n");
        Assert.Contains("detector stated by trace\n  North: detector Peak\n  South: detector RMS\n", output,
            StringComparison.Ordinal);
        Assert.Equal("RMS",
            folder.Json("a.csv")[0].GetProperty("traces")[1].GetProperty("settings").GetProperty("detector").GetString());
    }

    [Fact]
    public void APhaseIsSaidToBeReadInOneLine()
    {
        using LookFolder folder = new LookFolder()
            .With("a.csv", "frequency_hz,S21 (dB),S21 phase (deg)\n1000000,-50,1\n2000000,-51,2\n")
            .With("b.csv", "frequency_hz,S11 (dB),S21 (dB),S21 phase (deg)\n1000000,-3,-50,1\n2000000,-3.5,-51,2\n")
            .With("c.csv", "frequency_hz,level_db\n1000000,-3\n2000000,-3.5\n");
        string[] one = [.. folder.Look("a.csv", "--no-plot").Out.ReplaceLineEndings("\n").Split('\n')
            .Where(l => l.StartsWith("  phase", StringComparison.Ordinal))];
        Assert.Equal(["  phase: read"], one);
        Assert.Contains("\n  phase: read for S21 (dB)\n", folder.Look("b.csv", "--no-plot").Out.ReplaceLineEndings("\n"),
            StringComparison.Ordinal);
        Assert.DoesNotContain("phase", folder.Look("c.csv").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void AnUnstatedUnitIsADoubtSaidOnceForAllTracesAndTheFileNotUsable()
    {
        using LookFolder folder =
            new LookFolder().With("a.csv", "frequency_hz,Trace 1,Trace 2\n1000000,-50,-60\n2000000,-51,-61\n");
        (int code, string output, string error) = folder.Look("a.csv");
        Assert.Equal((2, ""), (code, error));
        Assert.Contains("  A campaign refuses this file for that." + Environment.NewLine, output, StringComparison.Ordinal);
        Assert.Equal(2, output.Split("not stated   ").Length - 1);
        Assert.Contains("  all traces: not usable as a sweep: the file does not say the unit of level of the column; use dBm",
            output, StringComparison.Ordinal);
        Assert.DoesNotContain(" |", output, StringComparison.Ordinal);
    }

    [Fact]
    public void AUnitCanBeTriedBeforeItIsWrittenIntoTheCampaign()
    {
        using LookFolder folder = new LookFolder().With("a.csv", "frequency,one,two\n1,-50,-60\n2,-51,-61\n");
        Assert.Equal(2, folder.Look("a.csv").Code);
        (int code, string output, _) = folder.Look("a.csv", "--frequency-unit", "mhz", "--level-unit", "dBuV", "--column", "two");
        Assert.Equal(0, code);
        Assert.Contains("two    level     dBµV       2  1 MHz  2 MHz    -60   -61     -61      -60", output,
            StringComparison.Ordinal);
        Assert.DoesNotContain("one", output, StringComparison.Ordinal);
        Assert.DoesNotContain("not usable", output, StringComparison.Ordinal);
    }

    [Fact]
    public void ABlankTraceGivesItsReasonInsteadOfLevels()
    {
        using LookFolder folder = new LookFolder().With("a.csv",
            "frequency_hz,Trace 1 [dBm],Trace 2 [dBm]\n"
                + string.Concat(Enumerable.Range(1, 50).Select(i => $"{i}000000,{-50 - i},-2147.48\n")));
        (int code, string output, _) = folder.Look("a.csv");
        Assert.Equal(0, code);
        Assert.Matches(@"Trace 2.*  50  1 MHz  50 MHz  blank: every reading is -2147\.48", output);
        Assert.Matches(@"Trace 1.*  50  1 MHz  50 MHz +-51 ", output);
        Assert.Single(output.Split('\n'),
            line => line.Contains('|', StringComparison.Ordinal) && line.Contains("-51 dBm", StringComparison.Ordinal));
    }

    [Fact]
    public void BadFilesAreNamedWithTheirLineAndTheOthersAreStillShown()
    {
        using LookFolder folder = new LookFolder().With("bad.csv",
            "frequency_hz,level_dbm\n1000000,-50\n2000000,-50\n3000000,NaN\n4000000,-50\n").With("good.csv", LookFolder.Ramp);
        (int code, string output, string error) =
            Shell.Run("look", folder.Path("bad.csv"), folder.Path("none.csv"), folder.Path("good.csv"));
        Assert.Equal(2, code);
        Assert.StartsWith(folder.Path("good.csv"), output, StringComparison.Ordinal);
        string[] errors = error.TrimEnd().ReplaceLineEndings("\n").Split('\n');
        Assert.Equal(2, errors.Length);
        Assert.StartsWith(folder.Path("bad.csv") + ":4: 'NaN' is not a finite number; ", errors[0], StringComparison.Ordinal);
        Assert.Equal(folder.Path("none.csv") + ": there is no such file; check the spelling of the path", errors[1]);
    }

    [Theory]
    [InlineData("Frequency (Hz),Level (dBm),Level (dBuV)\n30,-50,4\n31,-51,5\n", "in different units")]
    [InlineData("frequency_hz,Loss (dB)\n30,-50\n31,-51\n", "is a correction")]
    [InlineData("frequency_hz,level_dbm\n31,-50\n30,-51\n", "frequency falls")]
    public void OfSeveralFilesOneThatNoCampaignWouldTakeEndsWithTwo(string bad, string reason)
    {
        using LookFolder folder = new LookFolder().With("bad.csv", bad).With("good.csv", LookFolder.Ramp);
        (int code, string output, string error) = Shell.Run("look", folder.Path("bad.csv"), folder.Path("good.csv"));
        Assert.Equal((2, ""), (code, error));
        Assert.Contains(reason, output, StringComparison.Ordinal);
        Assert.Single(output.Split(Environment.NewLine),
            line => line.StartsWith("  A campaign refuses this file", StringComparison.Ordinal));
        Assert.Equal((2, 2),
            (Shell.Run("look", folder.Path("bad.csv"), "--format", "json").Code, folder.Look("bad.csv", "--quiet").Code));
        Assert.Contains(reason, folder.Look("bad.csv", "--quiet").Error, StringComparison.Ordinal);
        Assert.False(folder.Json("bad.csv")[0].GetProperty("usable").GetBoolean());
        Assert.Contains(reason, folder.Json("bad.csv")[0].GetProperty("refusal")[0].GetProperty("problem").GetString(),
            StringComparison.Ordinal);
        Assert.True(folder.Json("good.csv")[0].GetProperty("usable").GetBoolean());
        Assert.Equal(0, folder.Look("good.csv").Code);
    }

    [Fact]
    public void AColumnThatIsAskedForDecidesWhetherTheFileIsUsable()
    {
        using LookFolder folder = new LookFolder().With("a.csv", "Frequency (Hz),Level (dBm),Level (dBuV)\n30,-50,4\n31,-51,5\n");
        Assert.Equal((2, 0), (folder.Look("a.csv").Code, folder.Look("a.csv", "--column", "Level (dBm)").Code));
    }

    [Fact]
    public void QuietPrintsNothingButErrors()
    {
        using LookFolder folder = new LookFolder().With("good.csv", LookFolder.Ramp);
        Assert.Equal((0, "", ""), folder.Look("good.csv", "--quiet"));
        (int code, string output, string error) = folder.Look("none.csv", "--quiet", "--format", "json");
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("there is no such file", error, StringComparison.Ordinal);
    }

    [Fact]
    public void AFolderIsNoFileAndTheMessageSaysWhatToType()
    {
        using LookFolder folder = new LookFolder().With("sub/a.csv", LookFolder.Ramp);
        (int code, string output, string error) = folder.Look("sub/");
        Assert.Equal((2, ""), (code, output));
        Assert.Equal($"{folder.Path("sub/")}: this is a folder; name files, e.g. {folder.Path("sub")}/*.csv", error.TrimEnd());
    }

    [Theory]
    [InlineData("--level-unit", "furlong", "the level units are dBm, dBµV, dBmV, dB")]
    [InlineData("--frequency-unit", "THz", "the frequency units are Hz, kHz, MHz, GHz")]
    [InlineData("--column", " ", "name a column")]
    [InlineData("--format", "xml", "text")]
    public void AWordThatIsNotKnownEndsWithTwoAndTheKnownOnes(string option, string word, string known)
    {
        using LookFolder folder = new LookFolder().With("a.csv", LookFolder.Ramp);
        (int code, string output, string error) = folder.Look("a.csv", option, word);
        Assert.Equal((2, ""), (code, output));
        Assert.Contains(known, error, StringComparison.Ordinal);
    }

    [Fact]
    public void OfManyTracesTheFirstTwentyAreListedAndTheRestCounted()
    {
        string head = string.Concat(Enumerable.Range(1, 300).Select(i => $",t{i} [dBm]")),
            row = string.Concat(Enumerable.Range(1, 300).Select(i => $",-{i}"));
        using LookFolder folder = new LookFolder().With("a.csv", $"frequency_hz{head}\n1000000{row}\n2000000{row}\n");
        string output = folder.Look("a.csv").Out;
        Assert.Contains("  t20 ", output, StringComparison.Ordinal);
        Assert.DoesNotContain("  t21 ", output, StringComparison.Ordinal);
        Assert.Contains("  and 280 more traces; --format json lists all", output, StringComparison.Ordinal);
        Assert.Contains("  (3 of 300 traces drawn)", output, StringComparison.Ordinal);
        Assert.Equal(300, folder.Json("a.csv")[0].GetProperty("traces").GetArrayLength());
    }

    [Fact]
    public void NothingOutOfAFileSteersTheTerminal()
    {
        const string evil = "red\u001b[31m\u0007\u009b\u202e";
        using LookFolder folder = new LookFolder().With("a.csv", $"frequency_hz,{evil} one [dBm]\n1000000,-50\n2000000,-51\n")
            .With($"{evil}.csv", "no table\n");
        (_, string output, string error) = Shell.Run("look", folder.Path("a.csv"), folder.Path($"{evil}.csv"));
        Assert.Contains("red", output, StringComparison.Ordinal);
        Assert.Contains("red", error, StringComparison.Ordinal);
        Assert.DoesNotContain(output + error, c => (char.IsControl(c) && c is not ('\n' or '\r')) || c == '\u202e');
    }

    [Fact]
    public void TheSameIsPrintedInEveryLanguage()
    {
        using LookFolder folder =
            new LookFolder().With("a.csv", Preamble + "frequency_hz,level_dbm\n433920000,-100.25\n434000000.5,-71.125\n");
        string Everything() => folder.Look("a.csv").Out + folder.Look("a.csv", "--format", "json").Out;
        string usual = Everything();
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE",
                useUserOverride: false)
            { NumberFormat = { NumberDecimalSeparator = ",", NegativeSign = "−" } };
            Assert.Equal(usual, Everything());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
