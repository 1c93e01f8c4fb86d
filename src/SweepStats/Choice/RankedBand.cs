using SweepStats.Bands;

namespace SweepStats.Choice;

/// <summary>A band in which candidates are ranked, and how they were taken.</summary>
/// <param name="Band">The band.</param>
/// <param name="ByPlacement">Repeats are placements, else sweeps.</param>
/// <param name="AllPutBack">Every candidate was taken away and put back.</param>
internal readonly record struct RankedBand(NamedBand Band, bool ByPlacement, bool AllPutBack);
