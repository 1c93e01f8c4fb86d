using SweepStats.Sweeps;

namespace SweepStats.Rehearsal;

/// <summary>The shielding that a specimen truly has.</summary>
/// <param name="Name">Which specimen.</param>
/// <param name="ShieldingDb">True shielding at each frequency in dB.</param>
public sealed record TrueShielding(SpecimenName Name, ImmutableArray<double> ShieldingDb);

/// <summary>A campaign and the truth behind it. Immutable.</summary>
/// <param name="Campaign">Sweeps as a bench would give them.</param>
/// <param name="Grid">Frequencies.</param>
/// <param name="Truth">What the specimens truly shield, by lot and specimen.</param>
/// <param name="NoiseDbm">True noise power at each frequency, carriers left out.</param>
public sealed record RehearsedCampaign(
    Campaign Campaign, FrequencyGrid Grid, ImmutableArray<TrueShielding> Truth, ImmutableArray<double> NoiseDbm);
