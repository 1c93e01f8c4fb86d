using BenchmarkDotNet.Attributes;
using SweepStats.Report.Drawing;
using SweepStats.Report.Specimens;

namespace SweepStats.Benchmarks;

/// <summary>One chart of the shielding of one specimen, built and drawn as SVG.</summary>
[MemoryDiagnoser]
public class ChartBenchmarks
{
    private AnalysisResult _result = null!;

    [GlobalSetup]
    public void Draw() => _result = DrawnCampaign.Analysed(lots: 1, specimensPerLot: 1);

    [Benchmark]
    public byte[] Svg() => SvgPicture.Of(ShieldingChart.Of(_result, _result.Curves[0], "shielding")).File;
}
