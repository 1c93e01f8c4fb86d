using BenchmarkDotNet.Attributes;
using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Shielding;

namespace SweepStats.Benchmarks;

/// <summary>Shielding of one specimen with its limits; what an estimator prepares and remembers is made anew each time.</summary>
[MemoryDiagnoser]
public class ShieldingBenchmarks
{
    private AlignedCampaign _campaign = null!;
    private NoiseFloor _floor = null!;

    [GlobalSetup]
    public void Draw()
    {
        _campaign = DrawnCampaign.Aligned(lots: 1, specimensPerLot: 1);
        _floor = DrawnCampaign.Floor(_campaign);
    }

    [Benchmark]
    public ShieldingCurve Specimen() => DrawnCampaign.Curve(_campaign, _floor);
}
