using SweepStats.Alignment;

namespace SweepStats.Floor;

/// <summary>
/// Second and third cumulant of one floor reading in nepers of power, and how many independent readings tell them.
/// </summary>
internal readonly record struct FloorCumulants(double Second, double Third, double Readings)
{
    /// <summary>Those of the readings about the floor as it is pooled over frequency.</summary>
    public static FloorCumulants Of(SweepBlock floor, FloorSplit split)
    {
        double correlation = split.Scatter.Correlation;
        double fewer = (1 + correlation) / (1 - correlation);
        int sweeps = floor.SweepCount;
        (double[] level, int[] count, _) =
            FloorWindow.Pool(split.Scatter.Mean, split.Ambient, split.Noise[0], new(sweeps, fewer));
        double second = 0, third = 0;
        int readings = 0;
        for (int f = 0; f < level.Length; f++)
        {
            double behind = (double)sweeps * count[f];
            if (split.Ambient[f] || behind < 3)
            {
                continue;
            }

            for (int j = 0; j < sweeps; j++)
            {
                double rest = (floor[j][f] - split.Scatter.Offset[j] - level[f]) / DetectorNoise.DecibelsPerNeper;
                second += rest * rest * behind / (behind - 1);
                third += rest * rest * rest * behind * behind / ((behind - 1) * (behind - 2));
                readings++;
            }
        }

        return readings == 0 ? default : new FloorCumulants(second / readings, third / readings, readings / fewer);
    }
}
