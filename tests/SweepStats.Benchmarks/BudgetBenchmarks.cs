using BenchmarkDotNet.Attributes;
using SweepStats.Budgets;

namespace SweepStats.Benchmarks;

/// <summary>
/// Uncertainty budgets of one specimen, of the frequency its claim is weakest at and of the mean over the band.
/// </summary>
[MemoryDiagnoser]
public class BudgetBenchmarks
{
    private AnalysisResult _result = null!;

    [GlobalSetup]
    public void Draw() => _result = DrawnCampaign.Analysed(lots: 1, specimensPerLot: 1);

    [Benchmark]
    public SpecimenBudgets Specimen() => SpecimenBudgets.Of(
        _result.Curves[0], _result.Bands[0], _result.Campaign.Grid,
        new(_result.Plan.Uncertainties, [], null, _result.Plan.Confidence));
}
