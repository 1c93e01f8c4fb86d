using BenchmarkDotNet.Attributes;
using SweepStats.Lots;

namespace SweepStats.Benchmarks;

/// <summary>Comparing two lots of five specimens over the whole band.</summary>
[MemoryDiagnoser]
public class LotsBenchmarks
{
    private AnalysisResult _result = null!;

    [GlobalSetup]
    public void Draw() => _result = DrawnCampaign.Analysed(lots: 2, specimensPerLot: 5);

    [Benchmark]
    public LotComparison Lots() => LotComparer.Of(_result.Campaign, _result.Curves, [], new LotQuestion());
}
