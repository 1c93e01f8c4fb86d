using SweepStats.Files.Campaigns;
using SweepStats.Files.Results;
using SweepStats.Rehearsal;
using SweepStats.Storage;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>What does not fit into memory lies in a file of no name, and every result file is the same to the byte.</summary>
public sealed class RoomInMemory
{
    private static readonly string Demo = Path.Combine(Repository.Root, "fixtures", "campaigns", "receiver-cabin-curtain");

    private static readonly SummaryContext Context = new()
    {
        Program = "sweepstats",
        Version = "0.1.0",
        GeneratedAt = DateTimeOffset.UnixEpoch,
        Seed = 1,
        Inputs = [],
        ReportFiles = [],
        Assumptions = [],
        LeftOut = [],
    };

    [Theory]
    [InlineData(0, 1)]
    [InlineData(0, 2)]
    [InlineData(200_000, 2)]
    public void TheDemoIsTheSame(long room, int threads)
    {
        CampaignReading whole = Read(RowStore.UsualRoom, 1), few = Read(room, threads);

        AssertSame(Analysis.Run(whole.Campaign!, whole.Plan), Analysis.Run(few.Campaign!, few.Plan));
    }

    [Fact]
    public void PlacementsAPlateAndAnInterpolatedReferenceAreTheSame()
    {
        Campaign drawn = Rehearser.Draw(new RehearsalPlan
        {
            Points = 61,
            Lots = 2,
            SpecimensPerLot = 3,
            Placements = 3,
            CoveredSweeps = 2,
            PlateDb = 60,
            PlateSweeps = 2,
        }).Campaign;
        Campaign shifted = drawn with { Sweeps = [.. drawn.Sweeps.Select(s => s.Role == SweepRole.Reference ? Between(s) : s)] };
        var plan = new AnalysisPlan { Interpolate = true, Threads = 2 };

        AssertSame(Analysis.Run(shifted, plan), Analysis.Run(shifted with { Store = new RowStore(0) }, plan));
    }

    private static CampaignReading Read(long room, int threads)
    {
        CampaignReading reading = CampaignFolder.Read(Demo, new CampaignReadOptions(Threads: threads) { Room = room }, null);
        Assert.Empty(reading.Faults);
        return reading;
    }

    // Half a step beside the other sweeps, and one point more.
    private static Sweep Between(Sweep sweep)
    {
        double[] hertz = sweep.Grid.Hertz.ToArray();
        double step = hertz[1] - hertz[0];
        return new Sweep(sweep.Name, sweep.Role, new FrequencyGrid([hertz[0] - (step / 2), .. hertz.Select(h => h + (step / 2))]),
            [sweep.Levels[0], .. sweep.Levels], sweep.Scale)
        {
            TakenAt = sweep.TakenAt,
        };
    }

    private static void AssertSame(AnalysisResult one, AnalysisResult other)
    {
        Action<AnalysisResult, Stream>[] files =
        [
            ShieldingCsv.Write, BandsCsv.Write, BudgetCsv.Write, LotsCsv.Write, LotFrequenciesCsv.Write, ChoiceCsv.Write,
            FindingsCsv.Write, (result, to) => SummaryJson.Write(result, Context, to),
        ];
        Assert.All(files, write => Assert.Equal(Text(write, one), Text(write, other)));
        Assert.True(Text(ShieldingCsv.Write, one).Length > 1000);
    }

    private static string Text(Action<AnalysisResult, Stream> write, AnalysisResult result)
    {
        using var to = new MemoryStream();
        write(result, to);
        return System.Text.Encoding.UTF8.GetString(to.ToArray());
    }
}
