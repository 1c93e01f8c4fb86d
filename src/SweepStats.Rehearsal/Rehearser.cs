using System.Globalization;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Rehearsal;

/// <summary>Draws campaigns of known truth.</summary>
public static class Rehearser
{
    private const double WholeKilohertzFrom = 1e6;

    /// <summary>Draws a campaign.</summary>
    /// <exception cref="ArgumentException">The plan asks for what cannot be drawn; the message says what it needs.</exception>
    public static RehearsedCampaign Draw(RehearsalPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        PlanRules.Check(plan);
        FrequencyGrid grid = Grid(plan);
        CheckSteps(plan, grid);
        ImmutableArray<TrueShielding> truth = Truth(plan, grid);
        ImmutableArray<PlannedSweep> planned = SweepList.Of(plan, truth);
        var bench = new Bench(plan, grid);
        var sweeps = ImmutableArray.CreateBuilder<Sweep>(planned.Length);
        for (int i = 0; i < planned.Length; i++)
        {
            double time = planned.Length == 1 ? 0 : (double)i / (planned.Length - 1);
            sweeps.Add(bench.Take(planned[i], i, time));
        }

        return new RehearsedCampaign(
            // Floor and reference are taken on both sides of the specimens.
            new Campaign(plan.Title, sweeps.MoveToImmutable())
            {
                FloorTaking = SweepTaking.BeforeAndAfter,
                ReferenceTaking = SweepTaking.BeforeAndAfter,
                Properties = Cycles(plan, truth),
            },
            grid, truth, bench.NoiseDbm);
    }

    private static ImmutableArray<SpecimenProperty> Cycles(RehearsalPlan plan, ImmutableArray<TrueShielding> truth) =>
        plan.Cycles.IsEmpty ? [] : [.. truth.Select((specimen, i) =>
        {
            double cycles = plan.Cycles[i / plan.SpecimensPerLot];
            return new SpecimenProperty(specimen.Name, RehearsalPlan.CyclesName,
                cycles.ToString("R", CultureInfo.InvariantCulture), cycles);
        })];

    // Whole kHz where the spacing allows, so that files read like a bench's; below 1 MHz that would move a frequency too far, and
    // the lowest to 0 Hz.
    private static FrequencyGrid Grid(RehearsalPlan plan)
    {
        double start = plan.Band.Start.Value;
        double stop = plan.Band.Stop.Value;
        var hertz = new double[plan.Points];
        for (int i = 0; i < hertz.Length; i++)
        {
            double exact = plan.Points == 1 ? start : start * Math.Pow(stop / start, (double)i / (plan.Points - 1));
            hertz[i] = Math.Round(exact / 1000) * 1000;
            if (exact < WholeKilohertzFrom || (i > 0 && hertz[i] <= hertz[i - 1]))
            {
                hertz[i] = exact;
            }
        }

        try
        {
            return new FrequencyGrid([.. hertz]);
        }
        catch (ArgumentException e)
        {
            throw new ArgumentException($"A rehearsal of {plan.Points} points needs a wider band.", e);
        }
    }

    // A step between two points would change nothing, and nobody would be told.
    private static void CheckSteps(RehearsalPlan plan, FrequencyGrid grid)
    {
        foreach (LotStep step in plan.LotSteps)
        {
            if (!grid.Hertz.ToArray().Any(hertz => step.Band.Contains(new Hertz(hertz))))
            {
                throw new ArgumentException(FormattableString.Invariant(
                    $"A rehearsal needs a swept frequency for the step of lot {step.Lot}, and none lies from ")
                    + FormattableString.Invariant($"{step.Band.Start.Value:R} to {step.Band.Stop.Value:R} Hz."));
            }
        }
    }

    private static ImmutableArray<TrueShielding> Truth(RehearsalPlan plan, FrequencyGrid grid)
    {
        RandomSource random = new RandomSource(plan.Seed).Fork(0);
        var truth = ImmutableArray.CreateBuilder<TrueShielding>(plan.Lots * plan.SpecimensPerLot);
        for (int lot = 0; lot < plan.Lots; lot++)
        {
            LotStep[] steps = [.. plan.LotSteps.Where(s => s.Lot == LotName(lot))];
            double lotOffset =
                (plan.LotDeviationDb * random.Normal()) - (plan.Cycles.IsEmpty ? 0 : plan.WearDb * plan.Cycles[lot]);
            double deviation = plan.SpecimenDeviationDb * Spread(plan, LotName(lot));
            for (int specimen = 0; specimen < plan.SpecimensPerLot; specimen++)
            {
                double offset = lotOffset + (deviation * random.Normal());
                truth.Add(new TrueShielding(Name(lot, specimen), Shielding(plan, grid, steps, offset)));
            }
        }

        return truth.MoveToImmutable();
    }

    private static ImmutableArray<double> Shielding(RehearsalPlan plan, FrequencyGrid grid, LotStep[] steps, double offset)
    {
        var shielding = ImmutableArray.CreateBuilder<double>(grid.Count);
        foreach (double hertz in grid.Hertz)
        {
            double step = steps.Where(s => s.Band.Contains(new Hertz(hertz))).Sum(s => s.Change.Value);
            shielding.Add(plan.ShieldingStartDb + offset
                + ((plan.ShieldingStopDb - plan.ShieldingStartDb) * Along(plan.Band, hertz)) + step);
        }

        return shielding.MoveToImmutable();
    }

    internal static double Along(FrequencyBand band, double hertz) =>
        band.Stop > band.Start ? Math.Log(hertz / band.Start.Value) / Math.Log(band.Stop.Value / band.Start.Value) : 0;

    internal static double Spread(RehearsalPlan plan, string lot) =>
        plan.LotSpreads.Where((_, l) => LotName(l) == lot).DefaultIfEmpty(1).First();

    // Lots A, B, ... Z, then L27, L28: letters as long as there are letters.
    internal static string LotName(int lot) =>
        lot < 26 ? ((char)('A' + lot)).ToString() : string.Create(CultureInfo.InvariantCulture, $"L{lot + 1}");

    private static SpecimenName Name(int lot, int specimen)
    {
        string lotName = LotName(lot);
        return new SpecimenName(lotName, string.Create(CultureInfo.InvariantCulture, $"{lotName}{specimen + 1:00}"));
    }
}
