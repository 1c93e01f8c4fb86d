using BenchmarkDotNet.Attributes;
using SweepStats.Alignment;
using SweepStats.Floor;

namespace SweepStats.Benchmarks;

/// <summary>The noise floor from ten sweeps.</summary>
[MemoryDiagnoser]
public class FloorBenchmarks
{
    private AlignedCampaign _campaign = null!;

    [GlobalSetup]
    public void Draw() => _campaign = DrawnCampaign.Aligned(lots: 1, specimensPerLot: 1);

    [Benchmark]
    public NoiseFloor Floor() => DrawnCampaign.Floor(_campaign);
}
