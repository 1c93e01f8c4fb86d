using SweepStats.Acceptance.Commands;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Results;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Files;

public sealed class RehearsalsReadBack : IDisposable
{
    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void TimesSourceLevelsAndRolesComeBackAsTheCommandPlannedThem()
    {
        string path = Path.Combine(_folder.Path, "new");
        (int code, _, string error) = Shell.Run(
            "rehearse", path, "--points", "21", "--lots", "2", "--placements", "2", "--sweeps", "3", "--seed", "5", "--source",
            "7.5", "--linearity", "-12.5", "--linearity", "7.5", "--linearity-sweeps", "2", "--plate", "60", "--plate-sweeps",
            "2", "--starts-at", "2026-03-05T14:30+01:00", "--seconds", "0.25", "--drift", "1", "--drift-shape", "warm-up",
            "--odd", "reference:2:2", "--odd", "covered:4:-1:0.5", "--limit", "-29", "--ambient", "433MHz:20:0.5", "--jump-share",
            "0.05", "--jump", "2");
        Assert.Equal("", error);
        Assert.Equal(0, code);
        var plan = new RehearsalPlan
        {
            Points = 21,
            Lots = 2,
            Placements = 2,
            CoveredSweeps = 3,
            Seed = 5,
            SourceDbm = 7.5,
            LinearitySourcesDbm = [-12.5, 7.5],
            LinearitySweeps = 2,
            PlateDb = 60,
            PlateSweeps = 2,
            StartsAt = new DateTimeOffset(2026, 3, 5, 13, 30, 0, TimeSpan.Zero),
            SecondsPerSweep = 0.25,
            DriftDb = 1,
            DriftShape = DriftShape.WarmUp,
            OddSweeps = [new OddSweep(SweepRole.Reference, 2, 2), new OddSweep(SweepRole.Covered, 4, -1, 0.5)],
            LimitDbm = -29,
            Ambient = [new AmbientCarrier(new Hertz(433e6), new Decibels(20), 0.5)],
            JumpShare = 0.05,
            JumpDb = 2,
        };
        AssertSame(Rehearser.Draw(plan).Campaign, Read(path));
    }

    [Fact]
    public void WithoutTimesAndSourceLevelsTheFoldersAreAll()
    {
        string path = Path.Combine(_folder.Path, "new");
        Assert.Equal(0, Shell.Run("rehearse", path, "--points", "3", "--plate", "60", "--plate-sweeps", "2").Code);
        Assert.False(File.Exists(Path.Combine(path, "sweeps.csv")));
        AssertSame(Rehearser.Draw(new RehearsalPlan { Points = 3, PlateDb = 60, PlateSweeps = 2 }).Campaign, Read(path));
    }

    [Fact]
    public void AnExclusionComesBackWithItsReason()
    {
        var grid = new FrequencyGrid([1e6, 2e6]);
        var door = new Sweep("covered/A/A,1/c1.csv", SweepRole.Covered, grid, [-1, -2], LevelScale.DecibelMilliwatts)
        {
            Lot = "A",
            Specimen = "A,1",
            ExcludedBecause = "door \"ajar\", twice",
        };
        var campaign = new Campaign("t",
            [door, new Sweep("reference/r1.csv", SweepRole.Reference, grid, [-1, -1], LevelScale.DecibelMilliwatts)]);
        string path = Path.Combine(_folder.Path, "new");
        Assert.Empty(CampaignWriter.Write(path, campaign, "", null));
        AssertSame(campaign, Read(path));
    }

    private static Campaign Read(string path)
    {
        CampaignReading reading = CampaignFolder.Read(path, new CampaignReadOptions(), null);
        Assert.Equal("", string.Join('\n', reading.Faults));
        return reading.Campaign!;
    }

    private static void AssertSame(Campaign written, Campaign read)
    {
        Assert.Equal(written.Sweeps.Select(s => s.Name).Order(StringComparer.Ordinal),
            read.Sweeps.Select(s => s.Name).Order(StringComparer.Ordinal));
        foreach (Sweep sweep in written.Sweeps)
        {
            Sweep back = read.Sweeps.Single(s => s.Name == sweep.Name);
            Assert.Equal((sweep.Role, sweep.TakenAt, sweep.SourceDbm, sweep.ExcludedBecause),
                (back.Role, back.TakenAt, back.SourceDbm, back.ExcludedBecause));
            Assert.Equal((sweep.Lot, sweep.Specimen, sweep.Placement), (back.Lot, back.Specimen, back.Placement));
            Assert.All(sweep.Levels.Zip(back.Levels), p => Assert.Equal(p.First, p.Second, 0.0005001));
        }
    }
}
