using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Something transmits while the source is off.</summary>
internal sealed class Ambient : ICheck
{
    // Less than this beyond single looks is no transmitter worth looking for.
    private const double MoreThanSingleLooks = 1.15;

    // A sweep whose reading stays below this is one in which the transmitter was silent.
    private const double SilentShare = 0.99;

    /// <inheritdoc/>
    public string Code => "ambient";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => seen.Floor is { Source: FloorSource.Measured } ? null
        : seen.FloorLife is null ? Lacking.Sweeps(seen, SweepRole.Floor) : "the floor sweeps show no noise";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Floor is not { Source: FloorSource.Measured } floor)
        {
            yield break;
        }

        double most = Math.Max(MoreThanSingleLooks * SingleLookScatter.Db, SingleLookScatter.Limits(floor).High);
        if (floor.ReadingDeviationDb > most)
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Warning,
                Role = SweepRole.Floor,
                Size = new Decibels(floor.ReadingDeviationDb),
                Message = $"Floor readings scatter by {Amount.Db(floor.ReadingDeviationDb)}, more than noise can (single looks "
                    + $"scatter by {Amount.Db(SingleLookScatter.Db)}): something comes and goes over much of the band.",
                Basis = string.Create(Amount.Print, $"Scatter of {Amount.Count(floor.SweepCount, "floor sweep", "floor sweeps")}"
                    + $" {floor.ReadingDeviationDb:0.00} dB, against {most:0.00} dB, from where on it is told: so many single "
                    + $"looks hardly ever show as much."),
                NextStep = "Watch the floor for a while; find and switch off what transmits, or measure in a shielded room or "
                    + "at another hour.",
            };
        }

        if (floor.Ambient.Contains(true))
        {
            double[] quiet = Quiet(floor);
            bool[] pauses = [.. floor.Ambient.Select((ambient, f) => ambient && Pauses(seen, floor, quiet, f))];
            foreach (bool paused in new[] { false, true })
            {
                int[] here = [.. Enumerable.Range(0, quiet.Length).Where(f => floor.Ambient[f] && pauses[f] == paused)];
                if (here.Length > 0)
                {
                    yield return Transmitters(seen, floor, here, paused, here.Max(f => Highest(seen, f) - quiet[f]));
                }
            }
        }
    }

    private Finding Transmitters(Evidence seen, NoiseFloor floor, int[] here, bool paused, double aboveDb) => new()
    {
        Code = Code,
        Severity = Severity.Warning,
        Role = SweepRole.Floor,
        Where = Stretches.Where(seen.Campaign.Grid, here.Contains),
        Size = new Decibels(aboveDb),
        Message = $"With the source off there is more than noise at {Amount.OutOf(here.Length, floor.Ambient.Length)}, up to "
            + $"{Amount.Db(aboveDb)} above the floor: "
            + (paused ? "something transmits there now and then; other floor sweeps show nothing, so it may also be in some "
                + "covered sweeps and not in others."
                : floor.SweepCount > 1 ? "something transmits there in every floor sweep."
                : "something transmits there; one floor sweep does not show whether it pauses.")
            + " A carrier beats with the signal, so nothing is taken out there and only a lower bound is given.",
        Basis = string.Create(Amount.Print, $"{Amount.Count(floor.SweepCount, "floor sweep", "floor sweeps")} against the floor "
            + $"of the frequencies to both sides, and against each other; the limit is one that noise passes in 0.5 % of clean "
            + $"floors, all frequencies together, and allows for how uneven the floor is by itself."),
        NextStep = paused
            ? "Take more floor sweeps over a longer time to see all of it; measure in a shielded room or at a quiet hour, or "
                + "leave these frequencies out of the claim."
            : "Terminate the input: what stays is the receiver's own. Else find and switch off the transmitter, measure in a "
                + "shielded room or at another hour. Or leave these frequencies out of the claim.",
    };

    private static double Highest(Evidence seen, int f) =>
        seen.Campaign.Floor is { } sweeps
            ? Enumerable.Range(0, sweeps.SweepCount).Max(j => sweeps[j][f]) + (seen.Floor?.BandwidthShiftDb ?? 0) : double.NaN;

    private static bool Pauses(Evidence seen, NoiseFloor floor, double[] quiet, int f)
    {
        double silent = quiet[f] + floor.Noise[0].HighestReading(SilentShare) - floor.BandwidthShiftDb;
        return seen.Campaign.Floor is { SweepCount: > 1 } sweeps
            && Enumerable.Range(0, sweeps.SweepCount).Any(j => sweeps[j][f] < silent);
    }

    // The floor of the nearest frequencies at which nothing transmits, on both sides.
    private static double[] Quiet(NoiseFloor floor)
    {
        double[] level = [.. floor.LevelDb];
        for (int f = 0; f < level.Length; f++)
        {
            if (floor.Ambient[f])
            {
                int left = f;
                int right = f;
                while (left >= 0 && floor.Ambient[left])
                {
                    left--;
                }

                while (right < level.Length && floor.Ambient[right])
                {
                    right++;
                }

                double[] beside = [.. new[] { left, right }.Where(i => i >= 0 && i < level.Length).Select(i => floor.LevelDb[i])];
                level[f] = beside.Length == 0 ? level[f] : beside.Average();
            }
        }

        return level;
    }
}
