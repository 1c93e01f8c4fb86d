using SweepStats.Alignment;
using SweepStats.Bands;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Lots;

/// <summary>One of several campaigns whose lots are compared.</summary>
/// <param name="Label">What a reader calls it; each campaign has its own.</param>
/// <param name="Campaign">Its aligned sweeps.</param>
/// <param name="Curves">Shielding of its specimens, in the same order.</param>
public sealed record CampaignLots(string Label, AlignedCampaign Campaign, ImmutableArray<ShieldingCurve> Curves)
{
    /// <summary>Parts of the band that matter to the user.</summary>
    public ImmutableArray<NamedBand> NamedBands { get; init; } = [];

    /// <summary>A specimen that belongs to no lot; null for none.</summary>
    public SpecimenName? Yardstick { get; init; }
}
