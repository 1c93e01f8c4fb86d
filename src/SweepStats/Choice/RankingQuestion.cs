using SweepStats.Bands;
using SweepStats.Statistics;

namespace SweepStats.Choice;

/// <summary>How candidates are to be ranked. Immutable.</summary>
/// <param name="Question">What they are held against and weighed by.</param>
/// <param name="Bands">Bands to rank in, beside the whole one.</param>
/// <param name="Level">Two-sided level of the limits.</param>
/// <param name="Seed">Of the draws behind probabilities.</param>
public sealed record RankingQuestion(ChoiceQuestion Question, ImmutableArray<NamedBand> Bands, Confidence Level, ulong Seed);
