using SweepStats.Quantities;

namespace SweepStats.Bands;

/// <summary>A part of the analysed band that matters to the user.</summary>
/// <param name="Name">The user's name for it.</param>
/// <param name="Band">From where to where; it holds at least one analysed frequency.</param>
public sealed record NamedBand(string Name, FrequencyBand Band);
