using System.Text.Json;
using SweepStats.Acceptance.Files;
using SweepStats.Report.Text;
using Xunit;

namespace SweepStats.Acceptance.Commands;

public sealed class ReceiverTests
{
    private const string Header =
        "name,frequency_hz,level_dbm,level_u_db,sensitivity_dbm,sensitivity_u_db,uncovered_heard,covered_heard";
    private const string Good = "gate,145.5e6,-49,2,-116,2,yes,no";

    private static readonly string[] Single = ["receiver", "--level", "-40", "--level-u", "2", "--sensitivity", "-110",
        "--sensitivity-u", "2", "--silent", "--uncovered", "heard"];

    private static string Curtain => Path.Combine(Repository.Root, "fixtures/receivers/cabin-curtain.csv");

    [Fact]
    public void WhatTheGuideShowsIsWhatIsPrinted()
    {
        (int code, string output, string error) = Shell.Run("receiver", Curtain, "--claim", "60");
        Assert.Equal((0, ""), (code, error));
        string guide = File.ReadAllText(Path.Combine(Repository.Root, "src/SweepStats.Cli/Guide/receiver.md"));
        Assert.Contains("    sweepstats receiver fixtures/receivers/cabin-curtain.csv --claim 60\n", guide,
            StringComparison.Ordinal);
        Assert.All(output.TrimEnd().Split(Environment.NewLine), line =>
            Assert.Contains("    " + line + "\n", guide, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData()]
    [InlineData("--claim", "60")]
    [InlineData("--claim", "20", "--within", "1", "--confidence", "0.9")]
    public void TheFirstScreenHasAtMost25LinesOf80Columns(params string[] words)
    {
        Assert.InRange(Height(Shell.Run(["receiver", Curtain, .. words]).Out), 5, 25);
        using var scratch = new ScratchFolder();
        string file = Write(scratch, [Header, .. Enumerable.Range(0, 60).Select(LongNamed)]);
        string output = Shell.Run(["receiver", file, .. words]).Out;
        Assert.InRange(Height(output), 10, 25);
        Assert.Contains("More with --verbose: ", output, StringComparison.Ordinal);
        Assert.Contains("no proof that a person", output, StringComparison.Ordinal);
        Assert.DoesNotContain("More with --verbose", Shell.Run(["receiver", file, "--verbose", .. words]).Out,
            StringComparison.Ordinal);
    }

    [Fact]
    public void AContradictionIsToldEvenWhereThereIsLittleRoom()
    {
        using var scratch = new ScratchFolder();
        string file = Write(scratch, [
            Header, .. Enumerable.Range(0, 60)
                .Select(i => FormattableString.Invariant($"s{i},{1e3 * Math.Pow(1.27, i)},-60,2,-110,2,yes,no")),
            FormattableString.Invariant($"odd one,{1e3 * Math.Pow(1.27, 59)},-90,2,-110,2,yes,yes")]);
        Assert.Contains("odd one is still heard at 20.0 dB: both cannot be right", Shell.Run("receiver", file).Out,
            StringComparison.Ordinal);
    }

    /// <summary>70 dB less 1.645·√8 dB.</summary>
    [Fact]
    public void OneStationOnTheCommandLineGivesItsBound()
    {
        (int code, string output, string error) = Shell.Run([.. Single, "--claim", "60"]);
        Assert.Equal((0, ""), (code, error));
        Assert.StartsWith("Claim SE ≥ 60 dB: supported at the tested frequency (95 %, one-sided).", output,
            StringComparison.Ordinal);
        Assert.Contains("SE ≥ 65.3 dB (95 %, one-sided).", output, StringComparison.Ordinal);
        Assert.Contains("single seams, and more shielding than 65.3 dB.", output, StringComparison.Ordinal);
    }

    [Fact]
    public void ASupportedClaimNamesItsFrequenciesAndThoseOfWhichNothingIsShown()
    {
        string output = Claimed(0, Good, "far,433.9e6,-49,2,-116,2,no,no");
        Assert.StartsWith("Claim SE ≥ 60 dB: supported at 145.5 MHz (95 %, one-sided). Nothing is shown at 433.9 MHz. 1 of 2",
            output, StringComparison.Ordinal);
        Assert.Contains("and more shielding than 62.3 dB at 145.5 MHz.", output, StringComparison.Ordinal);
        Assert.StartsWith("Claim SE ≥ 60 dB: supported at 145.5 MHz and 433.9 MHz (95 %, one-sided). 2 of 2",
            Claimed(0, Good, "far,433.9e6,-49,2,-116,2,yes,no"), StringComparison.Ordinal);
    }

    /// <summary>Heard under the cover but not without it, and heard 20 dB below the stated sensitivity.</summary>
    [Theory]
    [InlineData("far,433.9e6,-49,2,-116,2,no,yes", "heard under the cover but not without it. Test again.")]
    [InlineData("far,433.9e6,-136,2,-116,2,yes,yes", "check level and sensitivity.")]
    public void AStationHeardUnderTheCoverWithholdsTheClaimEvenWhereItIsNoEvidence(string row, string why)
    {
        string output = Claimed(1, Good, row);
        Assert.StartsWith("Claim SE ≥ 60 dB: not shown, since far was heard under the cover and is no evidence. 1 of 2", output,
            StringComparison.Ordinal);
        Assert.Contains($"No evidence, far: {why}", output, StringComparison.Ordinal);
        Assert.DoesNotContain("Put the row", output, StringComparison.Ordinal);
    }

    [Fact]
    public void ABoundBesideAStationHeardAtItsFrequencySaysWhatToPutRightFirst() =>
        Assert.Contains("Put the row of far right first: heard under the cover, it may refute this.",
            Claimed(1, Good, "far,145.5e6,-49,2,-116,2,no,yes"), StringComparison.Ordinal);

    /// <summary>55 dB + 1.645·√8 dB = 59.7 dB refutes one band; at half the chance each of two has 60.5 dB.</summary>
    [Fact]
    public void WhatChanceMayDoInOneOfTwoBandsDoesNotRefuteTheClaim()
    {
        const string near = "near,145.5e6,-61,2,-116,2,yes,yes";
        string output = Claimed(1, near, "far,433.9e6,-49,2,-116,2,yes,no");
        Assert.StartsWith("Claim SE ≥ 60 dB: not shown in 1 of the 2 tested bands.", output, StringComparison.Ordinal);
        Assert.Contains("refuted by this band alone. Test it again: among 2 bands chance may do so.", output,
            StringComparison.Ordinal);
        Assert.StartsWith("Claim SE ≥ 60 dB: refuted,", Claimed(1, near), StringComparison.Ordinal);
    }

    [Fact]
    public void ManyBandsAreNamedByTheLowestAndTheHighest()
    {
        string[] rows = [.. Enumerable.Range(1, 5).Select(i => $"s{i},{i * i}e8,-49,2,-116,2,yes,no")];
        string output = Claimed(0, [.. rows, .. Enumerable.Range(1, 5).Select(i => $"n{i},{i}e6,-49,2,-116,2,no,no")]);
        Assert.StartsWith("Claim SE ≥ 60 dB: supported in each of the 5 tested bands, from 100 MHz up to 2.5 GHz (95 %, "
            + "one-sided). Nothing is shown at 5 other frequencies, from 1 MHz to 5 MHz.", output, StringComparison.Ordinal);
        Assert.Contains("and more shielding than the bound of each band.", output, StringComparison.Ordinal);
    }

    [Fact]
    public void NoFigureIsOfferedWhereNothingIsClaimed()
    {
        string output = Claimed(1, Good, "near,145.5e6,-79,2,-116,2,yes,yes");
        Assert.Contains("both cannot be right", output, StringComparison.Ordinal);
        Assert.Contains("places and polarisations, single seams.", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--level -40,5: this is not a number; write 40.5, with a decimal point", "--level", "-40,5")]
    [InlineData("no --out says where; add --out FOLDER", "--level", "-40", "--png")]
    [InlineData("without a unit it is in hertz", "--level", "-40", "--frequency", "145")]
    [InlineData("without a unit it is in hertz", "--level", "-40", "--frequency", "1e308GHz")]
    public void WhatIsRefusedIsToldWithTheRemedy(string said, params string[] words)
    {
        (int code, string output, string error) = Shell.Run(["receiver", "--sensitivity", "-110", "--silent", .. words]);
        Assert.Equal((2, ""), (code, output));
        Assert.Contains(said, Assert.Single(error.TrimEnd().Split(Environment.NewLine)), StringComparison.Ordinal);
    }

    [Fact]
    public void SilenceWithoutAControlShowsNothing()
    {
        (int code, string output, _) = Shell.Run("receiver", "--level", "-40", "--sensitivity", "-110", "--silent");
        Assert.Equal(0, code);
        Assert.StartsWith("Nothing is shown.", output, StringComparison.Ordinal);
        Assert.Contains("state whether it was heard without the cover", output, StringComparison.Ordinal);
        Assert.DoesNotContain("SE ≥", output, StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutUncertaintiesThereIsAMarginAndNoBound()
    {
        string output = Shell.Run("receiver", "--level", "-40", "--sensitivity", "-110", "--silent", "--uncovered", "heard",
            "--claim", "20").Out;
        Assert.StartsWith("Claim SE ≥ 20 dB: not shown.", output, StringComparison.Ordinal);
        Assert.Contains("The margin is 70.0 dB", output, StringComparison.Ordinal);
        Assert.DoesNotContain("one-sided", output, StringComparison.Ordinal);
    }

    /// <summary>5 W at 10 m and 150 MHz to a receiver of 0.25 µV: common practice in the trade (no source).</summary>
    [Fact]
    public void AStrongTwoWaySignalStandsAbout120DecibelsOverItsReceiversLimit()
    {
        string output = Shell.Run(
            "receiver", "--power", "36.99", "--distance", "10", "--frequency", "150MHz", "--level-u", "6", "--sensitivity",
                "-119.03", "--sensitivity-u", "2", "--silent", "--uncovered", "heard").Out;
        Assert.Contains("silent up to a margin of 120.1 dB ± 6.3 dB", output, StringComparison.Ordinal);
        Assert.Contains("Measure the level that is reckoned as if in free space.", output, StringComparison.Ordinal);
    }

    [Fact]
    public void JsonHoldsTheSameFigures()
    {
        JsonElement json = JsonDocument.Parse(Shell.Run([.. Single, "--claim", "60", "--format", "json"]).Out).RootElement;
        Assert.Equal("supported", json.GetProperty("claim").GetString());
        JsonElement group = json.GetProperty("groups")[0];
        Assert.Equal(70 - (1.6448536 * Math.Sqrt(8)), group.GetProperty("at_least_db").GetDouble(), 1e-4);
        Assert.Equal(JsonValueKind.Null, group.GetProperty("at_most_db").ValueKind);
    }

    [Fact]
    public void TheFolderIsWrittenWholeAndReplacedByTheNext()
    {
        using var scratch = new ScratchFolder();
        string folder = Path.Combine(scratch.Path, "out");
        for (int run = 0; run < 2; run++)
        {
            Assert.Equal((0, ""), Shell.Run("receiver", Curtain, "--out", folder, "--quiet") is var (code, output, _)
                ? (code, output) : default);
        }

        Assert.Equal(["charts/margins.svg", "receiver-groups.csv", "receiver.csv", "summary.json"],
            Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
                .Select(f => Path.GetRelativePath(folder, f).Replace('\\', '/')).Order(StringComparer.Ordinal));
        Assert.Equal(7, File.ReadAllLines(Path.Combine(folder, "receiver.csv")).Length);
        Assert.Contains("set at the gate", File.ReadAllText(Path.Combine(folder, "charts/margins.svg")),
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, "--claim", "60")]
    [InlineData(1, "--claim", "70")]
    public void AGateAsksWhetherTheClaimIsSupported(int code, params string[] claim) =>
        Assert.Equal(code, Shell.Run([.. Single, .. claim, "--gate"]).Code);

    [Theory]
    [InlineData("2: frequency_hz is empty", "gate,,-49,2,-116,2,yes,no")]
    [InlineData("2: level_dbm is '-49,0', which is no number", "gate,145.5e6,\"-49,0\",2,-116,2,yes,no")]
    [InlineData("2: frequency_hz is 145 Hz; write the frequency in hertz, from 1e3 to 1e12", "gate,145,-49,2,-116,2,yes,no")]
    [InlineData("2: the row has no name", ",145.5e6,-49,2,-116,2,yes,no")]
    [InlineData("2: covered_heard is empty; write yes or no", "gate,145.5e6,-49,2,-116,2,yes,")]
    [InlineData("2: uncovered_heard is 'maybe'; write yes or no", "gate,145.5e6,-49,2,-116,2,maybe,no")]
    [InlineData("2: level_u_db is -2 dB; write a number from 0 to 40 dB", "gate,145.5e6,-49,-2,-116,2,yes,no")]
    [InlineData("2: sensitivity_u_db is empty; write a number in dB", "gate,145.5e6,-49,2,-116,,yes,no")]
    [InlineData("2: the level is not stated; fill in level_dbm; or field_dbuv_per_m", "gate,145.5e6,,2,-116,2,yes,no")]
    [InlineData("3: the row repeats line 2; remove it", Good, Good)]
    [InlineData("there are no observations; write 1 to 200 rows")]
    public void ABadRowEndsWithTwoAndNamesItsLineAndWhatToDo(string said, params string[] rows)
    {
        using var scratch = new ScratchFolder();
        string file = Write(scratch, [Header, .. rows]);
        string folder = Path.Combine(scratch.Path, "out");
        (int code, string output, string error) = Shell.Run("receiver", file, "--out", folder);
        Assert.Equal((2, ""), (code, output));
        Assert.StartsWith($"{file}:{(char.IsDigit(said[0]) ? "" : " ")}{said}", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder));
    }

    [Theory]
    [InlineData(":1: the column 'uncovered_heard' is missing",
        "name,frequency_hz,level_dbm,level_u_db,sensitivity_dbm,sensitivity_u_db,covered_heard")]
    [InlineData(":1: 'levle_dbm' is not a column (did you mean 'level_dbm'?)",
        "name,frequency_hz,levle_dbm,level_u_db,sensitivity_dbm,sensitivity_u_db,uncovered_heard,covered_heard")]
    [InlineData(":1: the column 'name' is there twice",
        "name,name,frequency_hz,level_u_db,sensitivity_dbm,sensitivity_u_db,uncovered_heard,covered_heard")]
    public void ABadHeaderIsToldOnce(string said, string header)
    {
        using var scratch = new ScratchFolder();
        (int code, _, string error) = Shell.Run("receiver", Write(scratch, [header]));
        Assert.Equal(2, code);
        Assert.StartsWith(said, error[Path.Combine(scratch.Path, "stations.csv").Length..], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("level_u_db is below 6 dB, but a level reckoned by distance is no surer; write 6 dB or more, or measure",
        "gate,150e6,,3,-116,2,yes,no,37,0,10")]
    [InlineData("1.5 m is nearer than a wavelength", "gate,150e6,,6,-116,2,yes,no,37,0,1.5")]
    [InlineData("the level is stated in two ways", "gate,150e6,-40,6,-116,2,yes,no,37,0,10")]
    [InlineData("gain_dbi is empty", "gate,150e6,,6,-116,2,yes,no,37,,10")]
    public void ALevelByDistanceIsNoSurerThanItCanBe(string said, string row)
    {
        using var scratch = new ScratchFolder();
        (int code, _, string error) = Shell.Run("receiver", Write(scratch, [Header + ",power_dbm,gain_dbi,distance_m", row]));
        Assert.Equal(2, code);
        Assert.Contains(said, error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("receiver")]
    [InlineData("receiver", "no/such/file.csv")]
    [InlineData("receiver", "--level", "-40")]
    [InlineData("receiver", "--level", "-40", "--sensitivity", "-110")]
    [InlineData("receiver", "--level", "-40", "--silent")]
    [InlineData("receiver", "--sensitivity", "-110", "--silent")]
    [InlineData("receiver", "--level", "-40", "--sensitivity", "-110", "--silent", "--heard")]
    [InlineData("receiver", "--level", "-40", "--level-u", "2", "--sensitivity", "-110", "--silent")]
    [InlineData("receiver", "--level", "-40", "--field", "60", "--sensitivity", "-110", "--silent")]
    [InlineData("receiver", "--field", "60", "--sensitivity", "-110", "--silent")]
    [InlineData("receiver", "--power", "37", "--distance", "10", "--sensitivity", "-110", "--silent")]
    [InlineData("receiver", "--power", "37", "--distance", "10", "--frequency", "150MHz", "--level-u", "3", "--sensitivity-u",
        "1", "--sensitivity", "-110", "--silent")]
    [InlineData("receiver", "--power", "37", "--distance", "1", "--frequency", "150MHz", "--level-u", "6", "--sensitivity-u", "1",
        "--sensitivity", "-110", "--silent")]
    [InlineData("receiver", "--level", "-400", "--sensitivity", "-110", "--silent")]
    [InlineData("receiver", "--level", "-40", "--sensitivity", "-110", "--silent", "--frequency", "x")]
    [InlineData("receiver", "--level", "-40", "--sensitivity", "-110", "--silent", "--uncovered", "perhaps")]
    [InlineData("receiver", "--level", "-40", "--sensitivity", "-110", "--silent", "--gate")]
    [InlineData("receiver", "--level", "-40", "--sensitivity", "-110", "--silent", "--within", "3")]
    [InlineData("receiver", "stations.csv", "--silent")]
    public void WordsThatMakeNoSenseEndWithTwoAndOneLineThatHelps(params string[] words)
    {
        (int code, string output, string error) = Shell.Run(words);
        Assert.Equal((2, ""), (code, output));
        Assert.Single(error.TrimEnd().Split(Environment.NewLine));
    }

    private static string Claimed(int code, params string[] rows)
    {
        using var scratch = new ScratchFolder();
        (int ended, string output, _) = Shell.Run("receiver", Write(scratch, [Header, .. rows]), "--claim", "60", "--gate");
        Assert.Equal(code, ended);
        return output;
    }

    private static string LongNamed(int i)
    {
        string hertz = (1e6 * Math.Pow(1.1, i)).ToString("R", System.Globalization.CultureInfo.InvariantCulture);
        return $"a station with quite a long name {i},{hertz},-60,2,-110,2,{(i % 5 == 0 ? "" : "yes")},"
            + $"{(i % 3 == 0 ? "yes" : "no")}";
    }

    private static string Write(ScratchFolder scratch, IEnumerable<string> lines)
    {
        string file = Path.Combine(scratch.Path, "stations.csv");
        File.WriteAllLines(file, lines);
        return file;
    }

    private static int Height(string output) =>
        output.TrimEnd().Split(Environment.NewLine).Sum(line => WrappedLine.Of(line, WrappedLine.Usual).Count);
}
