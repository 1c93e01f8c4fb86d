using System.Numerics;
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
    /// <summary>What of them stands in the levels.</summary>
    public LeakageLevels Levels => new()
    {
        Beside = Standing.Any(l => l.Anywhere || !l.MayBe.IsEmpty) ? [.. Frequencies.Select(Highest)] : [],
        ShownDb = Standing.Any(l => l.Anywhere) ? [.. Frequencies.Select(Strongest)] : [],
        RemainderDb = Leakages.FirstOrDefault(l => l.Subtracted)?.RemainderDb ?? [],
    };

    private IEnumerable<int> Frequencies => Enumerable.Range(0, Campaign.Grid.Count);

    private IEnumerable<SteadyLeakage> Standing => Leakages.Where(l => !l.Subtracted);

    /// <summary>
    /// The floor sweeps as far as they are noise: what floors with phase leave when their mean is taken out; null where they show
    /// a signal and no noise.
    /// </summary>
    /// <param name="campaign">The aligned sweeps.</param>
    public static SweepBlock? Noise(AlignedCampaign campaign)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        return campaign.Floor is not { } floor ? null
            : CoherentFloor.Of(floor) is { } coherent ? coherent.LeakageDb().Any(double.IsFinite)
            ? coherent.NoiseSweeps(floor) : floor
            : ShapedFloor.Of(floor) is null ? floor : null;
    }

    /// <summary>Tells noise and leakage apart.</summary>
    /// <param name="campaign">The aligned sweeps.</param>
    /// <param name="averaging">How the receiver averages.</param>
    /// <param name="history">When the floor was measured.</param>
    /// <param name="same">The leakage is stated to be the same with and without the specimen.</param>
    public static FloorAndLeakage Of(AlignedCampaign campaign, Averaging averaging, FloorHistory? history, bool same)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        FloorAndLeakage split = campaign.Floor is { } floor ? Split(campaign, floor, averaging)
            : new FloorAndLeakage(campaign, null, []);
        FloorAndLeakage cleared = same && LeakageSubtraction.IsPossible(campaign) ? split.Cleared(history) : split;
        ImmutableArray<Complex> taken = cleared.Levels.RemainderDb.IsEmpty ? [] : [.. CoherentFloor.Of(campaign.Floor!)!.Mean];
        SteadyLeakage? plate = PlateLeakage.Of(cleared.Campaign, cleared.Floor, taken);
        return plate is null ? cleared : cleared with { Leakages = cleared.Leakages.Add(plate) };
    }

    private double Strongest(int f) => Standing.Max(l => l.LevelDb[f]);

    private LeakageLevel Highest(int f) =>
        Standing.Select(l => l.MayBe.IsEmpty ? LeakageLevel.Known(l.LevelDb[f]) : l.MayBe[f]).MaxBy(l => l.LimitDb);

    private FloorAndLeakage Cleared(FloorHistory? history) =>
        Leakages is [{ Source: LeakageSource.FloorPhase } shown] && CoherentFloor.Of(Campaign.Floor!) is { } coherent
            ? new FloorAndLeakage(
                LeakageSubtraction.From(Campaign, coherent), Floor,
                [shown with { RemainderDb = LeakageSubtraction.RemainderDb(coherent, history?.Later ?? []) }])
            : this;

    private static FloorAndLeakage Split(AlignedCampaign campaign, SweepBlock floor, Averaging averaging)
    {
        if (CoherentFloor.Of(floor) is { } coherent)
        {
            return coherent.LeakageDb() is var levels && levels.Any(double.IsFinite)
                ? With(campaign, NoiseFloorEstimator.Estimate(coherent.NoiseSweeps(floor), averaging),
                    new SteadyLeakage { Source = LeakageSource.FloorPhase, LevelDb = levels })
                : new FloorAndLeakage(campaign, NoiseFloorEstimator.Estimate(floor, averaging), []);
        }

        return ShapedFloor.Of(floor) is { } shaped
            ? With(campaign, NoiseFloorEstimator.InScatter(floor.SweepCount, shaped.NoisePower()),
                new SteadyLeakage { Source = LeakageSource.FloorShape, LevelDb = shaped.LevelDb })
            : new FloorAndLeakage(campaign, NoiseFloorEstimator.Estimate(floor, averaging), []);
    }

    private static FloorAndLeakage With(AlignedCampaign campaign, NoiseFloor noise, SteadyLeakage leakage) =>
        new(campaign, noise, [leakage]);
}
