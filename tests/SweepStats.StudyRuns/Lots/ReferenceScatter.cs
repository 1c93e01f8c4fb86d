using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.StudyRuns.Lots;

/// <summary>
/// How the reference sweeps of a campaign differ from each other beyond what all sweeps do: standard deviations in dB.
/// </summary>
/// <param name="OffsetDb">Of whole sweeps.</param>
/// <param name="RippleDb">Of a ripple that is smooth over frequency, six cosines of random size over the band.</param>
public readonly record struct ReferenceScatter(double OffsetDb, double RippleDb)
{
    private const int Cosines = 6;

    // Far from the streams of the rehearsal itself.
    private const ulong Stream = 5_000_000_000;

    internal Campaign On(Campaign campaign, ulong seed)
    {
        ReferenceScatter scatter = this;
        return scatter == default ? campaign : campaign with
        {
            Sweeps = [.. campaign.Sweeps.Select(
                (s, i) => s.Role == SweepRole.Reference ? scatter.On(s, new RandomSource(seed).Fork(Stream + (ulong)i)) : s)],
        };
    }

    private Sweep On(Sweep sweep, RandomSource random)
    {
        double offset = OffsetDb * random.Normal(), ripple = RippleDb * Math.Sqrt(2.0 / Cosines);
        double[] sizes = [.. Enumerable.Range(0, Cosines).Select(_ => random.Normal())];
        double Error(int f) =>
            offset + (ripple * sizes.Select((size, k) => size * Math.Cos(Math.PI * (k + 1) * f / sweep.Levels.Length)).Sum());
        return new Sweep(sweep.Name, sweep.Role, sweep.Grid, [.. sweep.Levels.Select((level, f) => level + Error(f))],
            sweep.Scale)
        { TakenAt = sweep.TakenAt };
    }
}
