using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>A sweep that lies as far from its repeats as dBµV reads from dBm.</summary>
/// <param name="Sweep">The sweep.</param>
/// <param name="AwayDb">How far above the middle of the others it lies on average, in dB; negative where below.</param>
internal sealed record MixedUnit(Sweep Sweep, double AwayDb)
{
    // As near as the levels of a sweep come to those that repeat it, once its unit is right.
    private const double AlikeDb = 3;

    /// <summary>All of them; where two sweeps repeat each other, the higher.</summary>
    public static IEnumerable<MixedUnit> In(AlignedCampaign campaign) =>
        campaign.Scale == LevelScale.DecibelMilliwatts ? campaign.Blocks().SelectMany(Among) : [];

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
        return block.Sweeps.Zip(levels, (sweep, level) => new MixedUnit(sweep, level - middle)).Where(m => m.IsOne);
    }

    private bool IsOne => Math.Abs(Math.Abs(AwayDb) - WrongUnit.OfMicrovoltsDb) <= AlikeDb;
}
