using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Sweeps;

namespace SweepStats.Leakage;

/// <summary>What the floor and plate sweeps of a campaign show: noise, and steady voltages beside it. Immutable.</summary>
/// <param name="Campaign">The campaign, without the leakage where that could be subtracted.</param>
/// <param name="Floor">The noise; null where no floor was measured.</param>
/// <param name="Leakages">What else reaches the receiver, by what shows it.</param>
public sealed record FloorAndLeakage(AlignedCampaign Campaign, NoiseFloor? Floor, ImmutableArray<SteadyLeakage> Leakages)
{
    /// <summary>Level in dB that all ways together may have at each frequency: that of the strongest; empty where nothing leaks.</summary>
    public ImmutableArray<double> LeakageDb =>
        Leakages.Any(l => l.Anywhere) ? [.. Enumerable.Range(0, Campaign.Grid.Count).Select(f => Leakages.Max(l => l.LevelDb[f]))] : [];

    /// <summary>Tells noise and leakage apart.</summary>
    /// <param name="campaign">The aligned sweeps.</param>
    /// <param name="averaging">How the receiver averages.</param>
    /// <param name="same">The leakage is stated to be the same with and without the specimen.</param>
    public static FloorAndLeakage Of(AlignedCampaign campaign, Averaging averaging, bool same)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        FloorAndLeakage split = campaign.Floor is { } floor ? Split(campaign, floor, averaging, same) : new FloorAndLeakage(campaign, null, []);
        SteadyLeakage? plate = PlateLeakage.Of(campaign, split.Floor);
        return plate is null ? split : split with { Leakages = split.Leakages.Add(plate) };
    }

    private static FloorAndLeakage Split(AlignedCampaign campaign, SweepBlock floor, Averaging averaging, bool same)
    {
        if (CoherentFloor.Of(floor) is { } coherent)
        {
            return coherent.LeakageDb() is var levels && levels.Any(double.IsFinite)
                ? Coherent(campaign, coherent, levels, (averaging, same && LeakageSubtraction.IsPossible(campaign)))
                : new FloorAndLeakage(campaign, NoiseFloorEstimator.Estimate(floor, averaging), []);
        }

        return ShapedFloor.Of(floor) is { } shaped
            ? new FloorAndLeakage(
                campaign, NoiseFloorEstimator.InScatter(floor.SweepCount, shaped.NoisePower()), [new SteadyLeakage { Source = LeakageSource.FloorShape, LevelDb = shaped.LevelDb }])
            : new FloorAndLeakage(campaign, NoiseFloorEstimator.Estimate(floor, averaging), []);
    }

    private static FloorAndLeakage Coherent(AlignedCampaign campaign, CoherentFloor coherent, ImmutableArray<double> levels, (Averaging Averaging, bool Subtract) how)
    {
        NoiseFloor noise = NoiseFloorEstimator.Estimate(coherent.NoiseSweeps(campaign.Floor!), how.Averaging);
        var leakage = new SteadyLeakage { Source = LeakageSource.FloorPhase, LevelDb = levels, ShownDb = levels };
        return how.Subtract
            ? new FloorAndLeakage(
                LeakageSubtraction.From(campaign, coherent), noise, [leakage with { Subtracted = true, LevelDb = LeakageSubtraction.RemainderDb(coherent) }])
            : new FloorAndLeakage(campaign, noise, [leakage]);
    }
}
