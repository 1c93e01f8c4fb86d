using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Results;
using SweepStats.Sweeps;

namespace SweepStats.Benchmarks;

/// <summary>Reading a folder of fifty files, one worker.</summary>
[MemoryDiagnoser]
public class ReadingBenchmarks
{
    private const int Files = 50;
    private readonly string _folder = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());

    [GlobalSetup]
    public void Draw()
    {
        Campaign campaign = DrawnCampaign.Of(lots: 1, specimensPerLot: 2);
        // Ten of the floor, ten of the reference, thirty of two specimens.
        ImmutableArray<Sweep> sweeps = [.. campaign.Sweeps.OrderBy(s => s.Role == SweepRole.Covered).Take(Files)];
        if (CampaignWriter.Write(_folder, campaign with { Sweeps = sweeps }, "averaging = \"power\"\n",
            truth: null) is [var fault, ..])
        {
            throw new IOException(fault.ToString());
        }
    }

    [GlobalCleanup]
    public void Remove() => Directory.Delete(_folder, recursive: true);

    [Benchmark]
    public Campaign Folder()
    {
        CampaignReading reading = CampaignFolder.Read(_folder, new CampaignReadOptions(), progress: null);
        return reading.Campaign ?? throw new InvalidDataException(string.Join('\n', reading.Faults));
    }
}
