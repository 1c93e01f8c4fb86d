using SweepStats.Rehearsal;

namespace SweepStats.StudyRuns.Trust;

/// <summary>A campaign to be drawn, and how it is analysed.</summary>
/// <param name="Drawn">The campaign; its seed is set by the study.</param>
/// <param name="Analysed">The choices of the analysis.</param>
public sealed record TrustCase(RehearsalPlan Drawn, AnalysisPlan Analysed)
{
    /// <summary>The analysis of the campaign of one seed.</summary>
    public AnalysisResult Run(ulong seed) => Analysis.Run(Rehearser.Draw(Drawn with { Seed = seed }).Campaign, Analysed);
}
