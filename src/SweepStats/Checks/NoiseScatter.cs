using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Checks;

/// <summary>Covered sweeps that scatter as noise alone does, though they lie where a signal would steady them.</summary>
/// <remarks>
/// A level of noise N and a steady signal S scatters, in power, by (1 + 2s)/(1 + s)² of what N alone does, s = S/N: the variance
/// of a noncentral χ² variable over its squared mean. The scatter of the source comes on top, as the reference shows it. Assumes
/// independent readings; offsets of whole sweeps are taken out. For averages in dB the law is near.
/// </remarks>
internal static class NoiseScatter
{
    // Lower, signal and noise scatter alike; higher, what scatters is the source or the specimen.
    private const double LeastRiseDb = 2;

    /// <summary>How far over the floor noise is looked for in dB.</summary>
    public const double MostRiseDb = 12;

    // Of all frequencies, those that lie lower than that (judgement, no source).
    private const double MostOfAll = 0.75;

    private const int FewestPoints = 10, FewestFreedom = 20;

    // The variance that is expected of a signal has to be so much less, and the one that is seen so near to that of noise, but
    // for its own error (judgement, no source).
    private const double Telling = 0.8, LikeNoise = 0.85, MoreThanNoise = 1.2;

    // Standard errors that what is seen has to lie above what a signal leaves.
    private const double Sure = 3;

    /// <summary>
    /// How far above the floor such sweeps lie on average, in dB; null where they scatter less, or nothing tells.
    /// </summary>
    public static double? RiseDb(Evidence seen, ShieldingCurve curve, SweepBlock covered, NoiseFloor floor) =>
        Look(seen, curve, covered, floor) is { IsNoise: true } looked ? looked.RiseDb : null;

    /// <summary>Whether the scatter of noise would stand out from that of a signal.</summary>
    public static bool CanTell(Evidence seen, ShieldingCurve curve, SweepBlock covered, NoiseFloor floor) =>
        Look(seen, curve, covered, floor) is { IsTelling: true };

    private static Scatter? Look(Evidence seen, ShieldingCurve curve, SweepBlock covered, NoiseFloor floor)
    {
        double[] rise = [.. curve.Readings.CoveredDb.ToArray().Select((level, f) => level - floor.LevelDb[f])];
        int[] places = [.. Enumerable.Range(0, rise.Length).Where(f => rise[f] is >= LeastRiseDb and <= MostRiseDb)];
        if (places.Length < FewestPoints || rise.Count(r => r <= MostRiseDb) < MostOfAll * rise.Length
            || floor.ReadingDeviationDb is not > 0)
        {
            return null;
        }

        double noise = floor.ReadingDeviationDb * floor.ReadingDeviationDb;
        Spread own = Spread.Of(covered, places), source = Spread.Of(seen.Campaign.Reference, places);
        int ofFloor = (floor.SweepCount - 1) * (rise.Length - 1);
        return own.DegreesOfFreedom < FewestFreedom || source.DegreesOfFreedom < FewestFreedom || ofFloor < FewestFreedom ? null
            : new Scatter(places.Average(f => rise[f]), own.Variance / noise,
                places.Average(f => OfNoise(rise[f])) + (source.Variance / noise),
                Math.Sqrt((2.0 / own.DegreesOfFreedom) + (2.0 / ofFloor)));
    }

    /// <summary>Share of the variance of noise that is left where a signal lifts the level.</summary>
    internal static double OfNoise(double riseDb)
    {
        double lifted = Math.Pow(10, riseDb / 10);
        return ((2 * lifted) - 1) / (lifted * lifted);
    }

    /// <summary>Variances against that of noise: as seen, and as a signal would leave.</summary>
    private readonly record struct Scatter(double RiseDb, double Ratio, double Expected, double RelativeError)
    {
        public bool IsTelling => Expected <= Telling && Expected * (1 + (Sure * RelativeError)) < 1;

        // Nearer to 1 than to what a signal leaves, and surely above that.
        public bool IsNoise => Expected <= Telling && Ratio >= (1 + Expected) / 2
            && Ratio >= Expected * (1 + (Sure * RelativeError))
            && Ratio >= LikeNoise - RelativeError && Ratio <= MoreThanNoise + RelativeError;
    }

    /// <summary>Scatter between sweeps of one placement at some frequencies, offsets of sweeps taken out.</summary>
    private readonly record struct Spread(double Squares, int DegreesOfFreedom)
    {
        public double Variance => DegreesOfFreedom > 0 ? Squares / DegreesOfFreedom : 0;

        public static Spread Of(SweepBlock block, int[] places)
        {
            Spread sum = default;
            foreach (IGrouping<string?, int> placement in Enumerable.Range(0, block.SweepCount)
                .GroupBy(j => block.Sweeps[j].Placement))
            {
                double[][] sweeps = [.. placement.Select(j => At(block[j], places))];
                sum = new Spread(sum.Squares + SquaresOf(sweeps),
                    sum.DegreesOfFreedom + ((sweeps.Length - 1) * (places.Length - 1)));
            }

            return sum;
        }

        // What lies off its sweep's and its frequency's mean.
        private static double SquaresOf(double[][] sweeps)
        {
            double[] offsets = [.. sweeps.Select(s => Sample.Mean(s))];
            double grand = Sample.Mean(offsets), squares = 0;
            for (int f = 0; f < sweeps[0].Length; f++)
            {
                double mean = sweeps.Average(s => s[f]);
                for (int j = 0; j < sweeps.Length; j++)
                {
                    double rest = sweeps[j][f] - mean - offsets[j] + grand;
                    squares += rest * rest;
                }
            }

            return squares;
        }

        private static double[] At(ReadOnlySpan<double> levels, int[] places)
        {
            var picked = new double[places.Length];
            for (int i = 0; i < picked.Length; i++)
            {
                picked[i] = levels[places[i]];
            }

            return picked;
        }
    }
}
