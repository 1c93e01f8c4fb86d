using BenchmarkDotNet.Attributes;
using SweepStats.Choice;

namespace SweepStats.Benchmarks;

/// <summary>Ranking ten specimens over the whole band.</summary>
[MemoryDiagnoser]
public class ChoiceBenchmarks
{
    private AnalysisResult _result = null!;

    [GlobalSetup]
    public void Draw() => _result = DrawnCampaign.Analysed(lots: 2, specimensPerLot: 5);

    [Benchmark]
    public SpecimenChoice? Choice() =>
        SpecimenRanker.Of(_result.Campaign, _result.Curves, [],
            new(new(), [], _result.Plan.Confidence, _result.Plan.Seed));
}
