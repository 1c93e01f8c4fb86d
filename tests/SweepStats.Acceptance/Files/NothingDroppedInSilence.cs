using SweepStats.Files;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Results;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>What is passed over is told truly, and small slips in lists and settings get the remedy that mends them.</summary>
public sealed class NothingDroppedInSilence : IDisposable
{
    private const string Plain = ScratchFolder.Traces.Plain;

    private readonly ScratchFolder _folder = new ScratchFolder().WithUsualSweeps();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("Level point 1 (dBm)", true)]
    [InlineData("Level no 2 [dBm]", true)]
    [InlineData("Level n 3 angle 30 deg (dBm)", true)]
    [InlineData("Level uncertainty (dB)", false)]
    [InlineData("Level (dBm) angle (deg)", false)]
    [InlineData("Limit point 1 (dBm)", false)]
    public void AStatedUnitOfLevelGoesBeforeWordsThatNumber(string name, bool read)
    {
        TraceReading reading = Look($"Frequency (Hz),Level (dBm),{name}\n1000,-50,-60\n2000,-51,-61\n");
        Assert.Equal(read ? 2 : 1, reading.Traces.Length);
    }

    [Theory]
    [InlineData("angle 30", "a phase")]
    [InlineData("mask 2", "a limit")]
    public void ARowThatIsPassedOverIsToldWithWhatItWasTakenFor(string row, string what)
    {
        TraceReading reading = Look($"Sweep (dBm),88MHz,88.2MHz,88.4MHz\nfirst,-50,-51,-52\n{row},-60,-61,-62\n");
        Assert.Single(reading.Traces);
        Assert.Contains($"line 3, '{row}', was taken for {what} and not read; rename the row if it holds levels",
            reading.Assumptions);
    }

    [Fact]
    public void TheLimitsFileIsNoSweepThatWasNotListed()
    {
        _folder.With("limits/l.csv", "frequency_hz,se_db\n30e6,20\n1e9,40\n")
            .With("campaign.toml", "[requirement]\nfile = \"limits/l.csv\"\n")
            .With("sweeps.csv", "file,role,specimen\nreference/r1.csv,reference,\ncovered/A/A1/c1.csv,covered,A1\n");
        CampaignReading reading = _folder.Read();
        Assert.Empty(reading.Faults);
        Assert.DoesNotContain(reading.Assumptions, a => a.Contains("limits/l.csv", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("{\"program\": \"another\"}")]
    [InlineData("no json")]
    public void AFolderIsNoEarlierReportForAnySummary(string summary)
    {
        CampaignReading reading = _folder.With("data/summary.json", summary).With("data/r2.csv", Plain).Read();
        Assert.Contains(reading.Faults, f => f.File == "data/r2.csv");
    }

    [Fact]
    public void ADeclaredFloorIsNotCalledUnusedBeforeTheFloorIsLookedAt()
    {
        CampaignReading reading =
            _folder.With("floor/f.csv", Plain).With("campaign.toml", "[floor]\ndeclared_dbm = -100\n").Read();
        Assert.DoesNotContain(reading.Assumptions, a => a.StartsWith("declared_dbm was not used", StringComparison.Ordinal));
    }

    [Fact]
    public void AColonInANameIsLegalAndAnAbsolutePathIsMadeRelative()
    {
        _folder.With("reference/r 14:30.csv", Plain);
        Assert.Empty(Listed("file,role,specimen\nreference/r 14:30.csv,reference,\ncovered/A/A1/c1.csv,covered,A1\n"));
        string absolute = Path.Combine(_folder.Path, "reference/r1.csv");
        Assert.Equal(
            $"sweeps.csv:2: '{absolute}' is an absolute path; write the path relative to campaign.toml: reference/r1.csv",
            Listed($"file,role\n{absolute},reference\n")[0]);
        Assert.Contains("leads out of the campaign", Listed("file,role\nC:/data/r1.csv,reference\n")[0],
            StringComparison.Ordinal);
    }

    [Fact]
    public void AnAbsoluteLimitsFileWithinIsMadeRelative()
    {
        string path = Path.Combine(_folder.Path, "l.csv");
        _folder.With("l.csv", "frequency_hz,se_db\n30e6,20\n1e9,40\n")
            .With("campaign.toml", $"[requirement]\nfile = \"{path}\"\n");
        Assert.Equal("write the path relative to campaign.toml: l.csv", _folder.Read().Faults[0].Remedy);
    }

    [Theory]
    [InlineData("# one\n# two\nfile,role,lott\nreference/r1.csv,reference,\n", "sweeps.csv:3: 'lott' is not a column")]
    [InlineData("# one\nfile\nreference/r1.csv\n", "sweeps.csv:2: the column 'role' is missing")]
    [InlineData("file,role,\nreference/r1.csv,reference,\n", "sweeps.csv:1: column 3 has no name; remove the comma at the end")]
    [InlineData("file,,role\nreference/r1.csv,,reference\n", "sweeps.csv:1: column 2 has no name; name it, or remove it")]
    [InlineData("file;role\nreference/r1.csv;reference;more\n", "put text with semicolons into double quotes")]
    [InlineData("", "sweeps.csv: the file is empty, or is not a regular file; fill it in, or remove it")]
    public void TheHeaderOfTheListIsFoundWhereItStands(string text, string said) =>
        Assert.Contains(said, Listed(text)[0], StringComparison.Ordinal);

    [Theory]
    [InlineData("# remark\nfrequency_hz,db\n1,2\n2,3\n", 2, "the columns are not frequency_hz and se_db")]
    [InlineData("frequency_hz,se_db,note\n30e6,20,a\n1e9,40,b\n", 1, "there is a column 'note' beside frequency_hz and se_db")]
    public void ALimitsFileIsToldOfWhereItIsWrong(string text, int line, string problem)
    {
        ReadFault fault = Assert.Single(Limits(text));
        Assert.Equal((line, problem), (fault.Line, fault.Problem));
    }

    [Fact]
    public void BlanksBesideTheNamesOfALimitsFileDoNotMatter() =>
    Assert.Empty(Limits("frequency_hz, se_db\n30e6, 20\n1e9, 40\n"));

    [Theory]
    [InlineData("2026-03-05 14:30", "2026-03-05T14:30:00+00:00")]
    [InlineData("2026-03-05 14:30:15+01:00", "2026-03-05T14:30:15+01:00")]
    public void DateAndTimeMayBePartedByABlank(string written, string meant)
    {
        _folder.With("sweeps.csv",
            $"file,role,specimen,taken_at\nreference/r1.csv,reference,,{written}\ncovered/A/A1/c1.csv,covered,A1,\n");
        Assert.Contains(_folder.Read().Campaign!.Sweeps,
            s => s.TakenAt == DateTimeOffset.Parse(meant, System.Globalization.CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("", "title is empty; fill it in, or remove the key")]
    [InlineData("a\\tb", "title holds control characters; remove them, such as tabs and line ends")]
    public void ATextIsRefusedForItsOwnReason(string title, string said) =>
        Assert.Equal("campaign.toml:1: " + said,
            Assert.Single(_folder.With("campaign.toml", $"title = \"{title}\"\n").Read().Faults).ToString());

    [Fact]
    public void EveryLineOfTheTemplateMayBeTakenIntoUse()
    {
        string folder = Path.Combine(_folder.Path, "new");
        CampaignTemplate.Write(folder);
        string path = Path.Combine(folder, "campaign.toml");
        File.WriteAllLines(path, File.ReadAllLines(path).Select(l => l.StartsWith('#') ? l[1..].TrimStart(' ') : l));
        ReadFault[] faults =
            [.. CampaignFolder.Read(folder, new CampaignReadOptions(), null).Faults.Where(f => f.File == "campaign.toml")];
        Assert.DoesNotContain(faults, f => f.Problem.Contains("not TOML", StringComparison.Ordinal));
        Assert.DoesNotContain(faults, f => f.Problem.Contains("more than one way", StringComparison.Ordinal));
    }

    [Fact]
    public void AFileInTheWayOfACampaignIsCalledOne()
    {
        string path = Path.Combine(_folder.Path, "campaign.toml");
        _folder.With("campaign.toml", "");
        Assert.Equal(
            "this is a file, not a folder",
            Assert.Single(CampaignWriter.Write(path, new Sweeps.Campaign("x", []), "", LevelDigits.All)).Problem);
    }

    private string[] Listed(string text) => [.. _folder.With("sweeps.csv", text).Read().Faults.Select(f => f.ToString())];

    private System.Collections.Immutable.ImmutableArray<ReadFault> Limits(string text) =>
        _folder.With("l.csv", text).With("campaign.toml", "[requirement]\nfile = \"l.csv\"\n").Read().Faults;

    private TraceReading Look(string text) => _folder.With("t.csv", text).Trace("t.csv", new TraceReadOptions());
}
