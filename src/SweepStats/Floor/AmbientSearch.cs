using SweepStats.Alignment;
using SweepStats.Statistics;

namespace SweepStats.Floor;

/// <summary>Finds frequencies where the floor holds more than noise.</summary>
/// <remarks>
/// Three questions at every frequency: does the mean of all sweeps stand above the floor to both sides; does some sweep stand
/// above it; does some sweep stand above the other sweeps, which needs neither neighbours nor an even floor. At the ends of a
/// band whose floor slopes, and at those of a few points, only the last of them can be asked.
/// </remarks>
internal sealed class AmbientSearch
{
    // Chance of one false alarm in a whole clean floor, shared by the three questions and all frequencies.
    private const double FalseAlarm = 0.005;
    private const int Questions = 3;

    // A slow ripple of the floor is no transmitter, however many sweeps resolve it.
    private const double LeastExcessDb = 1;

    // One step of the display more is rounding.
    private const double LeastSteps = 1.5;

    // Where the frequencies are so few that nothing shows how uneven the floor is by itself: ranges and preamplifiers move it
    // by several dB (common practice, no source).
    private const double LeastAmongFewDb = 6;

    // A wider transmitter hides its own middle from its edges; each round the marked ones are passed over.
    private const int MostRounds = 4;

    // The higher of two sides errs upwards, which makes up for most of what its error adds; half an error more does for single
    // looks, whose readings fall deep and rise little. By numbers: clean floors of 3 to 1001 points, 1 to 10 sweeps.
    private const double SideErrors = 0.6;

    // What the higher of two sides adds to the scatter of a mean, by numbers: normal variables, sides of six.
    private const double OfBothSides = 1.1;

    private readonly SweepBlock _floor;
    private readonly FloorScatter _scatter;
    private readonly AmbientLimits _limits;
    private readonly double _reading;
    private readonly double _mean;
    private readonly double _least;

    private AmbientSearch(SweepBlock floor, FloorScatter scatter, DetectorNoise noise)
    {
        _floor = floor;
        _scatter = scatter;
        _limits = new AmbientLimits(noise, floor.SweepCount, FalseAlarm / Questions / floor.PointCount, DegreesOfFreedom(floor));
        _reading = noise.LogStandardDeviation;
        _mean = _reading / Math.Sqrt(floor.SweepCount);
        _least = Math.Max(LeastExcessDb, LeastSteps * DisplayStep.Of(floor));
    }

    /// <summary>
    /// Marks frequencies that stand above both sides (steady), or that some sweep shows higher than noise goes (pausing).
    /// </summary>
    /// <param name="floor">The floor sweeps.</param>
    /// <param name="scatter">The same, split.</param>
    /// <param name="noise">How noise alone reads.</param>
    public static bool[] Mark(SweepBlock floor, FloorScatter scatter, DetectorNoise noise)
    {
        var search = new AmbientSearch(floor, scatter, noise);
        bool[] marks = [.. Enumerable.Range(0, floor.PointCount).Select(search.StandsAboveOthers)];
        for (int round = 0; round < MostRounds; round++)
        {
            var beside = new FloorProminence(scatter.Mean, marks, search._mean);
            bool[] more = [.. marks.Select((marked, f) => marked || search.StandsAboveSides(beside, f))];
            if (more.AsSpan().SequenceEqual(marks))
            {
                break;
            }

            marks = more;
        }

        return marks;
    }

    // As many as the scatter of the readings is told by; of one sweep neighbours serve twice.
    private static double DegreesOfFreedom(SweepBlock floor) =>
        floor.SweepCount > 1 ? (floor.SweepCount - 1) * Math.Max(1, floor.PointCount - 1) : Math.Max(1, floor.PointCount / 2);

    private bool StandsAboveOthers(int point)
    {
        if (_floor.SweepCount < 2)
        {
            return false;
        }

        var readings = new double[_floor.SweepCount];
        for (int j = 0; j < readings.Length; j++)
        {
            readings[j] = Reading(j, point);
        }

        Ascending.Sort(readings);
        return readings[^1] - readings[_limits.MiddleOfOthers] > Math.Max(_least, _limits.AboveOthers);
    }

    private bool StandsAboveSides(FloorProminence beside, int point)
    {
        double least = (beside.ShowsUnevenness ? _least : Math.Max(_least, LeastAmongFewDb)) + beside.BendDb;
        double mean = beside.ExcessDb[point] - (SideErrors * beside.SideErrorDb);
        double highest = mean + Enumerable.Range(0, _floor.SweepCount).Max(j => Reading(j, point)) - _scatter.Mean[point];
        if (!(mean > Math.Max(least, _limits.Mean) || highest > Math.Max(least, _limits.Single)))
        {
            return false;
        }

        double spread = beside.SpreadDb(point) / OfBothSides;
        double uneven = Math.Max(0, (spread * spread) - (_mean * _mean));
        return mean > Math.Max(least, _limits.Mean * Math.Sqrt(1 + (uneven / (_mean * _mean))))
            || highest > Math.Max(least, _limits.Single * Math.Sqrt(1 + (uneven / (_reading * _reading))));
    }

    private double Reading(int sweep, int point) => _floor[sweep][point] - _scatter.Offset[sweep];
}
