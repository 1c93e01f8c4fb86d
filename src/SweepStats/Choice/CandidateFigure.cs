using SweepStats.Statistics;

namespace SweepStats.Choice;

/// <summary>What a candidate shields over a band.</summary>
/// <param name="Mean">Its mean, as candidates are compared by.</param>
/// <param name="DeviationDb">Standard deviation of one repeat in dB; null where nothing repeats.</param>
internal readonly record struct CandidateFigure(CandidateMean Mean, double? DeviationDb);
