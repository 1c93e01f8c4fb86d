using System.Security.Cryptography;
using BenchmarkDotNet.Attributes;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Results;
using SweepStats.Files.Traces;
using SweepStats.Files.Traces.Twins;
using SweepStats.Sweeps;

namespace SweepStats.Benchmarks;

/// <summary>
/// Reading 220 files, one worker, beside a plain scan of their bytes, and beside taking the hash that a report names
/// each file by. The folder as a whole is walked, its settings are read, and its sweeps are put in order.
/// </summary>
[MemoryDiagnoser]
public class ReadingBenchmarks
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
    private readonly ByteScan _scan = new();
    private string[] _files = [];

    [GlobalSetup]
    public void Draw()
    {
        if (CampaignWriter.Write(_folder, DrawnCampaign.Of(lots: 1, specimensPerLot: 10), "averaging = \"power\"\n",
            truth: null) is [var fault, ..])
        {
            throw new IOException(fault.ToString());
        }

        _files = Directory.GetFiles(_folder, "*.csv", SearchOption.AllDirectories)
            .Where(file => Path.GetFileName(file) != CampaignFolder.ManifestName).ToArray();
    }

    [GlobalCleanup]
    public void Remove() => Directory.Delete(_folder, recursive: true);

    [Benchmark(Baseline = true)]
    public double Scan() => _files.Sum(file => _scan.Numbers(_scan.Bytes(file))[^1]);

    [Benchmark]
    public double ScanAndHash() => _files.Sum(file =>
    {
        ReadOnlySpan<byte> bytes = _scan.Bytes(file);
        return _scan.Numbers(bytes)[^1] + SHA256.HashData(bytes)[0];
    });

    [Benchmark]
    public double Files()
    {
        TraceReadOptions known = new() { Grids = new GridMemory(), Twins = new TwinMemory() };
        return _files.Sum(file => TraceFile.Read(file, file, known).Traces[0].Levels[^1]);
    }

    [Benchmark]
    public Campaign Folder()
    {
        CampaignReading reading = CampaignFolder.Read(_folder, new CampaignReadOptions(), progress: null);
        return reading.Campaign ?? throw new InvalidDataException(string.Join('\n', reading.Faults));
    }
}
