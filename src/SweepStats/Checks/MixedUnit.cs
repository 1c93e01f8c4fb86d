using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>A sweep that lies as far from its repeats as dBµV reads from dBm.</summary>
/// <param name="Sweep">The sweep.</param>
/// <param name="AwayDb">How far above the middle of the others it lies on average, in dB; negative where below.</param>
/// <param name="LevelDbm">Its level on average.</param>
internal sealed record MixedUnit(Sweep Sweep, double AwayDb, double LevelDbm)
{
    // As near as the levels of a sweep come to those that repeat it, once its unit is right.
    private const double AlikeDb = 3;

    // A sweep so near the floor may have had no source, however far below its repeats it lies (judgement, no source).
    private const double NearFloorDb = 6;

    /// <summary>
    /// All of them; where two sweeps repeat each other, the higher. Neither those that lost their sign, nor those that lie in the
    /// floor.
    /// </summary>
    public static IEnumerable<MixedUnit> In(Evidence seen)
    {
        if (seen.Campaign.Scale != LevelScale.DecibelMilliwatts)
        {
            return [];
        }

        double noise = seen.Floor is { } floor ? Sample.Mean(floor.LevelDb.AsSpan()) : double.NaN;
        HashSet<Sweep> without = [.. LostSign.Single(seen)];
        return seen.Campaign.Blocks().SelectMany(Among).Where(m => !without.Contains(m.Sweep)
            && !(m.Sweep.Role != SweepRole.Floor && Math.Abs(m.LevelDbm - noise) < NearFloorDb));
    }

    /// <summary>The finding.</summary>
    /// <param name="code">Code of the check.</param>
    public Finding Told(string code) => new()
    {
        Code = code,
        Severity = Severity.Fault,
        Role = Sweep.Role,
        Specimen = Sweep.Role == SweepRole.Covered ? SpecimenName.Of(Sweep) : null,
        Sweep = Sweep.Name,
        Size = new Decibels(AwayDb),
        Bias = Bias.Unknown,
        Misleads = true,
        Message = $"The unit of {Sweep.Name} looks wrong: it reads {Amount.Db(Math.Abs(AwayDb))} "
            + $"{(AwayDb > 0 ? "above" : "below")} the sweeps that it repeats.",
        Basis = $"Levels in dBµV read {WrongUnit.OfMicrovoltsDb:0} dB above those in dBm (50 Ω); told within "
            + $"{Amount.Db(AlikeDb)} of that.",
        NextStep = $"Look whether {Sweep.Name} and its repeats are in one unit. Correct the unit in the file, or take the sweep "
            + "again.",
    };

    private static IEnumerable<MixedUnit> Among(SweepBlock block)
    {
        if (block.HighestDb - block.LowestDb < WrongUnit.OfMicrovoltsDb - AlikeDb)
        {
            return [];
        }

        double[] levels = [.. Enumerable.Range(0, block.SweepCount).Select(j => Sample.Mean(block[j]))];
        // The lower of the middle two: of two sweeps one is named, and not both.
        double middle = levels.Order().ElementAt((levels.Length - 1) / 2);
        return block.Sweeps.Zip(levels, (sweep, level) => new MixedUnit(sweep, level - middle, level)).Where(m => m.IsOne);
    }

    private bool IsOne => Math.Abs(Math.Abs(AwayDb) - WrongUnit.OfMicrovoltsDb) <= AlikeDb;
}
