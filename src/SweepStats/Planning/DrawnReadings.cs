using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;
using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Planning;

/// <summary>Draws what campaigns read at one frequency: means of reference, covered and floor, each with its error.</summary>
/// <remarks>
/// Near the floor the noise curve bends and log readings are skewed, so mean and scatter go together; readings are therefore
/// drawn one by one. The floor truly reads 0 dB. The seed is fixed: the same plan gives the same figures.
/// </remarks>
/// <param name="basis">What is known of the set-up.</param>
/// <param name="numbers">Sweeps taken.</param>
internal sealed class DrawnReadings(PlanBasis basis, SweepNumbers numbers)
{
    public const int MostCampaigns = 4000;

    private const int FewestCampaigns = 1000;

    // So many sweeps are drawn for one figure before campaigns are saved on.
    private const int UsualSweeps = 400_000;

    private const int Seed = 20;

    private readonly double _rounding = basis.RoundingDb * basis.RoundingDb;
    private readonly double _referenceFreedom = basis.ReferenceRepeats.Freedom(numbers.ReferenceSweeps);
    private readonly double _coveredFreedom = basis.UnitRepeats(numbers).Freedom(numbers.Units);
    private readonly double _coveredFactor = basis.UnitRepeats(numbers).Factor(numbers.Units);

    /// <summary>Campaigns drawn: 4 000; of more than 100 covered sweeps fewer, down to 1 000.</summary>
    public int Campaigns { get; } = Math.Clamp(UsualSweeps / Math.Max(1, numbers.CoveredSweeps), FewestCampaigns, MostCampaigns);

    /// <summary>All campaigns of one kind.</summary>
    /// <param name="noise">How noise reads.</param>
    /// <param name="rangeDb">Displayed reference less displayed floor.</param>
    /// <param name="shieldingDb">True shielding.</param>
    public IEnumerable<ReadingLevels> Draw(DetectorNoise noise, double rangeDb, double shieldingDb)
    {
        var random = new MersenneTwister(Seed, threadSafe: false);
        double snr = noise.SnrInDecibels(rangeDb);
        var units = new double[numbers.Units];
        var signals = new CoveredSignals(
            new DrawnSignals(basis.PlacementRepeats, basis.PlacementDeviationDb ?? 0, numbers.Placements),
            new DrawnSignals(basis.SweepRepeats, basis.SweepDeviationDb, numbers.SweepsEach));
        for (int i = 0; i < Campaigns; i++)
        {
            // A stated error stays the same throughout a campaign; it is drawn into the reference, which the noise does not bend.
            double error = basis.TypeB.Parts.IsEmpty ? 0 : basis.TypeB.Quantile(random.NextDouble());
            RepeatedLevel reference = Reference(noise, rangeDb, snr, random);
            yield return new ReadingLevels(
                reference with { MeanDb = reference.MeanDb + error },
                Covered(noise, snr - shieldingDb, units, signals, random),
                new RepeatedLevel(basis.FloorError.StandardUncertainty * Normal.Sample(random, 0, 1), basis.FloorError),
                basis.TypeB);
        }
    }

    // A reference worth planning for stands far over the floor, where its readings are normal.
    private RepeatedLevel Reference(DetectorNoise noise, double rangeDb, double snr, MersenneTwister random)
    {
        double one = (basis.ReferenceDeviationDb * basis.ReferenceDeviationDb) + NoisyLevel.Variance(noise, snr);
        double variance = basis.ReferenceRepeats.OfMean(one, numbers.ReferenceSweeps);
        double shape = _referenceFreedom / 2;
        double seen = variance * Gamma.Sample(random, shape, shape);
        return new RepeatedLevel(
            rangeDb + Normal.Sample(random, 0, Math.Sqrt(variance)),
            new Contribution(Math.Sqrt(seen + _rounding), _referenceFreedom))
        {
            UsualErrorDb = Math.Sqrt(variance + _rounding),
        };
    }

    private RepeatedLevel Covered(
        DetectorNoise noise, double snr, double[] units, CoveredSignals signals, MersenneTwister random)
    {
        int each = numbers.CoveredSweeps / units.Length;
        for (int unit = 0; unit < units.Length; unit++)
        {
            // A specimen that stays where it is keeps its placement, which is then part of what is measured.
            double placed = snr + (numbers.Placements > 1 ? signals.Placements.Next(0, random) : 0);
            double sum = 0;
            for (int sweep = 0; sweep < each; sweep++)
            {
                sum += NoisyLevel.Sample(noise, signals.Sweeps.Next(placed, random), random);
            }

            units[unit] = sum / each;
        }

        double mean = Sample.Mean(units);
        double error = _coveredFactor * (Sample.SquaredDeviations(units, mean) / (units.Length - 1) / units.Length);
        double usual = basis.UnitRepeats(numbers)
            .OfMean(basis.UnitVariance(numbers) + (NoisyLevel.Variance(noise, snr) / each), units.Length);
        return new RepeatedLevel(mean, new Contribution(Math.Sqrt(error + _rounding), _coveredFreedom))
        {
            UsualErrorDb = Math.Sqrt(usual + _rounding),
        };
    }

    private sealed record CoveredSignals(DrawnSignals Placements, DrawnSignals Sweeps);
}
