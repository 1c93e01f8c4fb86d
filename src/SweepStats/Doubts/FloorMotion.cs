using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Doubts;

/// <summary>
/// The noise has risen since the floor was measured: covered readings pile up at one level above it. Immutable.
/// </summary>
/// <remarks>
/// Where a specimen hides the signal its readings are the noise of that moment, and their rise over a floor measured once is the
/// same at all those frequencies, however reference and shielding run. A signal's rise spreads out: it follows the reference and
/// the specimen. A pile counts where it lies above what floors move by anyway, is as narrow as noise, and holds many more
/// readings than the stretch of rises above it.
/// </remarks>
public sealed record FloorMotion
{
    // A rise of more than this is no drift of a receiver.
    private const double HighestRiseDb = 8;
    private const double HalfWidthInErrors = 2;

    // Where means scatter by more, a pile is as wide as the stretch in which it is looked for.
    private const double MostErrorDb = 1.2;
    private const double MoreThanAbove = 3;
    private const int FewestReadings = 8;
    private const double Score = 3;
    private const double Between = 1.05;

    /// <summary>Which specimen.</summary>
    public required SpecimenName Specimen { get; init; }

    /// <summary>How far the noise has risen, in dB.</summary>
    public required double RiseDb { get; init; }

    /// <summary>Standard error of the rise in dB.</summary>
    public required double ErrorDb { get; init; }

    /// <summary>Readings in the pile.</summary>
    public required ImmutableArray<int> Points { get; init; }

    /// <summary>How far the floor is to be taken to lie off at most.</summary>
    public double ReachDb => RiseDb + (HalfWidthInErrors * ErrorDb);

    /// <summary>
    /// Specimens whose readings pile up; none where the floor was measured before and after, so that its motion shows in itself.
    /// </summary>
    /// <param name="campaign">The aligned sweeps.</param>
    /// <param name="floor">The floor; null where none is known.</param>
    /// <param name="history">When it was measured; null where it was not.</param>
    public static ImmutableArray<FloorMotion> Of(AlignedCampaign campaign, NoiseFloor? floor, FloorHistory? history)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        return floor is null || history is null or { Bracketed: true } ? []
            : [.. campaign.Covered.Select(c => Of(c, floor)).OfType<FloorMotion>()];
    }

    private static FloorMotion? Of(SpecimenBlock specimen, NoiseFloor floor)
    {
        double[] rise = Rises(specimen.Block, floor);
        int[] low = [.. Enumerable.Range(0, rise.Length).Where(f => !floor.Ambient[f] && rise[f] < HighestRiseDb)
            .OrderBy(f => rise[f])];
        if (low.Length < FewestReadings)
        {
            return null;
        }

        double noise = floor.Noise.Max(n => n.LogStandardDeviation), floorError = low.Average(f => floor.StandardErrorDb[f]);
        double error = Math.Sqrt((noise * noise / specimen.Block.SweepCount) + (floorError * floorError));
        if (error > MostErrorDb)
        {
            return null;
        }

        double half = HalfWidthInErrors * error;
        int[] pile = Fullest(low, rise, 2 * half);
        double middle = pile.Average(f => rise[f]);
        // Shared by all readings of the pile: what whole sweeps of the floor differ by.
        double shared = floor.SweepOffsetDeviationDb is { } offset ? offset / Math.Sqrt(floor.SweepCount) : 0;
        double uncertainty = Math.Sqrt((error * error / pile.Length) + (shared * shared));
        int above = low.Count(f => rise[f] > middle + half && rise[f] <= middle + (3 * half));
        bool isPile = pile.Length >= FewestReadings && pile.Length > MoreThanAbove * (above + 1)
            && middle - (Score * uncertainty) > floor.HalfWidthDb && IsAsNarrowAsNoise(pile, rise, error);
        return isPile ? new FloorMotion
        {
            Specimen = specimen.Name,
            RiseDb = middle,
            ErrorDb = uncertainty,
            Points = [.. pile.Order()],
        } : null;
    }

    private static double[] Rises(SweepBlock block, NoiseFloor floor) =>
        [.. block.Means().Select((mean, f) => mean - floor.LevelDb[f])];

    // The stretch of that width that holds most readings.
    private static int[] Fullest(int[] byRise, double[] rise, double width)
    {
        (int first, int end) = (0, 0);
        for (int start = 0, stop = 0; start < byRise.Length; start++)
        {
            while (stop < byRise.Length && rise[byRise[stop]] <= rise[byRise[start]] + width)
            {
                stop++;
            }

            (first, end) = stop - start > end - first ? (start, stop) : (first, end);
        }

        return byRise[first..end];
    }

    // Cut off at two standard deviations, normal scatter keeps 0.88 of them; a stretch evenly filled has 1.15.
    private static bool IsAsNarrowAsNoise(int[] pile, double[] rise, double error) =>
        Sample.StandardDeviation([.. pile.Select(f => rise[f])]) < Between * error;
}
