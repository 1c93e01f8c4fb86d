using System.Globalization;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Results;
using SweepStats.Quantities;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Files;

public sealed class CampaignsWrittenAndReadBack : IDisposable
{
    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void AtFullPrecisionEveryBitComesBack(string culture)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            for (int seed = 0; seed < 20; seed++)
            {
                AssertSame(Drawn(seed));
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void ThreeDecimalsRoundTheLevelsOnly()
    {
        Campaign campaign = Drawn(1);
        string path = Path.Combine(_folder.Path, "new");
        Assert.Empty(CampaignWriter.Write(path, campaign, "", "lot,specimen\n"));
        CampaignReading reading = CampaignFolder.Read(path, new CampaignReadOptions(), null);
        Assert.Contains("truth.csv was taken as the truth of a rehearsal and not read", reading.Assumptions);
        foreach (Sweep sweep in campaign.Sweeps)
        {
            Sweep read = reading.Campaign!.Sweeps.Single(s => s.Name == sweep.Name);
            Assert.Equal(sweep.Grid, read.Grid);
            Assert.All(sweep.Levels.Zip(read.Levels), p => Assert.Equal(p.First, p.Second, 0.0005001));
        }
    }

    [Theory]
    [InlineData(LevelScale.DecibelMilliwatts)]
    [InlineData(LevelScale.DecibelRatio)]
    [InlineData(LevelScale.DecibelMicrovoltsPerMeter)]
    public void PhasesComeBackToTheLastBit(LevelScale scale)
    {
        var random = new Random(3);
        var grid = new FrequencyGrid([1e6, 2e6, 3e6]);
        Sweep Drawn(string name, SweepRole role, bool phased) => new(name, role, grid, [-50, -51, -52], scale)
        {
            Phases = phased ? [random.NextDouble() * 360, -180 * random.NextDouble(), 0] : [],
        };
        Campaign campaign = new("t",
            [Drawn("reference/r.csv", SweepRole.Reference, true), Drawn("covered/A/A1/c.csv", SweepRole.Covered, false)]);
        string path = Path.Combine(_folder.Path, "new");
        Assert.Empty(CampaignWriter.Write(path, campaign, "", LevelDigits.All));
        CampaignReading reading = CampaignFolder.Read(path, new CampaignReadOptions(), null);
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.All(campaign.Sweeps, s =>
            Assert.Equal(s.Phases.AsEnumerable(), reading.Campaign!.Sweeps.Single(r => r.Name == s.Name).Phases.AsEnumerable()));
    }

    [Theory]
    [InlineData("../x.csv")]
    [InlineData("/tmp/x.csv")]
    [InlineData("floor/x.txt")]
    public void ANameThatIsNoPathWithinTheFolderIsTheCallersMistake(string name)
    {
        var sweep = new Sweep(name, SweepRole.Floor, new FrequencyGrid([1, 2]), [1, 2], LevelScale.DecibelRatio);
        Assert.Throws<ArgumentException>(() => CampaignWriter.Write(_folder.Path, new Campaign("t", [sweep]), "", null));
    }

    [Fact]
    public void AFolderThatHoldsAnythingIsNotWrittenInto()
    {
        _folder.WithUsualSweeps();
        Assert.Equal("the folder is not empty", Assert.Single(CampaignWriter.Write(_folder.Path, Drawn(1), "", null)).Problem);
        Assert.Equal(["covered", "reference"],
            Directory.EnumerateFileSystemEntries(_folder.Path).Select(Path.GetFileName).Order());
    }

    [Fact]
    public void TheTemplateReadsBackWithoutFaultButForItsMissingSweeps()
    {
        string path = Path.Combine(_folder.Path, "new");
        CampaignTemplate.Write(path);
        CampaignReading reading = CampaignFolder.Read(path, new CampaignReadOptions(), null);
        Assert.Equal("the campaign holds no sweeps", Assert.Single(reading.Faults).Problem);
        Assert.Throws<IOException>(() => CampaignTemplate.Write(path));
        Assert.Equal(["covered", "floor", "reference"], Directory.EnumerateDirectories(path).Select(Path.GetFileName).Order());
    }

    [Fact]
    public void TheTemplateIsReadyForTracesInItsFolders()
    {
        CampaignTemplate.Write(_folder.Path);
        CampaignReading reading = _folder.WithUsualSweeps().Read();
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(2, reading.Campaign!.Sweeps.Length);
        Assert.Contains("sweeps.csv lists no sweeps; the folders' names were used", reading.Assumptions);
    }

    [Fact]
    public void TheTemplateWithItsRemarksTakenAwayReadsToo()
    {
        CampaignTemplate.Write(_folder.Path);
        string settings = Path.Combine(_folder.Path, "campaign.toml");
        string[] lines = [.. File.ReadAllLines(settings).TakeWhile(l => l != "# [[files]]")
            .Where(l => !l.Contains("points =", StringComparison.Ordinal) && !l.Contains("file =", StringComparison.Ordinal))
            .Select(WithoutRemark)];
        File.WriteAllLines(settings, lines);
        string manifest = Path.Combine(_folder.Path, "sweeps.csv");
        string[] rows = [.. File.ReadAllLines(manifest)
            .Where(l => !l.StartsWith("# ", StringComparison.Ordinal) || l.Contains(".csv,", StringComparison.Ordinal))
            .Select(l => l.TrimStart('#', ' '))];
        File.WriteAllLines(manifest, [rows[0] + ",price_eur,supplier,washes",
            .. rows[1..].Select(r => r + (r.Contains("A1,p1", StringComparison.Ordinal) ? ",12.50,north,20" : ",,,"))]);
        foreach (string row in rows[1..])
        {
            _folder.With(row.Split(',')[0],
                "frequency_hz,Trace 1 (dBm),Trace 2 (dBm)\n1,-1,-2\n2,-1,-2\n".Replace("Trace 2 (dBm)", "Trace 2",
                    StringComparison.Ordinal));
        }

        CampaignReading reading = _folder.Read();
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.NotNull(reading.Plan.Field);
        Assert.Equal(-104, reading.Plan.DeclaredFloorDb);
        Assert.Contains(reading.Campaign!.Sweeps, s => s.ExcludedBecause == "door stood open");
        Assert.Equal(new SpecimenName("autumn", "A1"), reading.Plan.Choice.Yardstick);
        Assert.Equal(["12.50", "north", "20"], reading.Campaign.Properties.Select(p => p.Text));
        Assert.Equal("washes", reading.Plan.Lots.OrderedBy);
        Assert.Equal(("communications", 0.95), (Assert.Single(reading.Plan.NamedBands).Name, reading.Plan.Lots.Share));
    }

    // "# key = value" and "# [section]" become settings; sentences stay remarks.
    private static string WithoutRemark(string line)
    {
        string bare = line.TrimStart('#', ' ');
        return line.StartsWith('#') && (bare.StartsWith('[') || System.Text.RegularExpressions.Regex.IsMatch(bare, "^[a-z_]+ = "))
            ? bare : line;
    }

    private static Campaign Drawn(int seed)
    {
        var random = new Random(seed);
        double hertz = 0;
        var grid = new FrequencyGrid(
            [.. Enumerable.Range(0, 50).Select(_ => hertz += random.NextDouble() * Math.Pow(10, random.Next(0, 9)))]);
        LevelScale scale = seed % 2 == 0 ? LevelScale.DecibelMilliwatts : LevelScale.DecibelRatio;
        Sweep Of(string name, SweepRole role) =>
            new(name, role, grid, [.. Enumerable.Range(0, 50).Select(_ => (random.NextDouble() - 0.7) * 150)], scale);
        return new Campaign("t", [Of("covered/Ä b/c (1)/p,1/s01.csv", SweepRole.Covered), Of("floor/f1.csv", SweepRole.Floor),
            Of("reference/r1.csv", SweepRole.Reference)]);
    }

    private void AssertSame(Campaign campaign)
    {
        string path = Path.Combine(_folder.Path, Guid.NewGuid().ToString("N"));
        Assert.Empty(CampaignWriter.Write(path, campaign, "title = \"t\"\n", LevelDigits.All));
        CampaignReading reading = CampaignFolder.Read(path, new CampaignReadOptions(Threads: 2), null);
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(campaign.Title, reading.Campaign!.Title);
        foreach ((Sweep written, Sweep read) in campaign.Sweeps.Zip(reading.Campaign.Sweeps))
        {
            Assert.Equal((written.Name, written.Role, written.Scale), (read.Name, read.Role, read.Scale));
            Assert.Equal(written.Grid, read.Grid);
            Assert.Equal(written.Levels.Select(BitConverter.DoubleToInt64Bits),
                read.Levels.Select(BitConverter.DoubleToInt64Bits));
        }
    }
}
