using SweepStats.Sweeps;

namespace SweepStats;

/// <summary>The whole flow from sweeps to verdict.</summary>
public static class Analysis
{
    /// <summary>Analyses a campaign.</summary>
    /// <exception cref="Alignment.AlignmentException">The sweeps cannot be compared with each other.</exception>
    public static AnalysisResult Run(Campaign campaign, AnalysisPlan plan, IProgress<double>? progress = null) => throw new NotImplementedException();
}
