using SweepStats.Sweeps;

namespace SweepStats.Rehearsal;

/// <summary>What a plan must keep to so that it can be drawn.</summary>
internal static class PlanRules
{
    // More is no bench but a typing error, and would take minutes and all memory before anybody is told.
    private const int MostSweeps = 100_000, MostReadings = 50_000_000, MostLooks = 500_000_000, MostDb = 1000,
        MostLooksOfOne = 1_000_000, MostCycles = 1_000_000_000;

    // As no frequency of a file lies above.
    private const long MostHertz = 1_000_000_000_000_000;

    /// <summary>Checks a plan.</summary>
    /// <exception cref="ArgumentException">It asks for what cannot be drawn; the message says what a rehearsal needs.</exception>
    public static void Check(RehearsalPlan plan)
    {
        CheckCounts(plan);
        CheckReceiver(plan);
        double[] spreads = [plan.LotDeviationDb, plan.SpecimenDeviationDb, plan.PlacementDeviationDb, plan.SweepDeviationDb,
            plan.ScatterDb, plan.QuantisationDb, .. plan.LotSpreads];
        Require(Array.TrueForAll(spreads, s => s >= 0), "spreads and steps that are not negative");
        Require(plan.ReferenceRippleDb >= 0, "a swing of the reference that is not negative");
        CheckSize(plan);
        CheckSteps(plan);
        CheckFaults(plan);
        CheckFigures(plan);
    }

    private static void CheckCounts(RehearsalPlan plan)
    {
        Require(plan.Points >= 1, "at least 1 point");
        Require(plan.Band.Start.Value > 0, "a band that starts above 0 Hz");
        Require(plan.FloorSweeps >= 0, "0 or more floor sweeps");
        Require(plan.ReferenceSweeps >= 1, "at least 1 reference sweep");
        Require(plan.CoveredSweeps >= 1, "at least 1 covered sweep");
        Require(plan.Lots >= 1 && plan.SpecimensPerLot >= 1, "at least 1 lot and 1 specimen");
        Require(plan.Cycles.IsEmpty || plan.Cycles.Length == plan.Lots, "as many numbers of cycles as lots");
        Require(double.IsFinite(plan.WearDb), "a wear that is a number");
        Require(plan.Placements >= 0, "0 or more placements");
    }

    private static void CheckReceiver(RehearsalPlan plan)
    {
        Require(plan.Looks >= 1, "at least 1 look");
        bool whole = plan.Averaging is Averaging.Log or Averaging.Peak or Averaging.Lowest;
        Require(!whole || plan.Looks == Math.Floor(plan.Looks),
            "a whole number of looks for log averaging, and where one look is kept");
    }

    // Reckoned in real numbers, which do not overflow.
    private static void CheckSize(RehearsalPlan plan)
    {
        double covered = (double)plan.Lots * plan.SpecimensPerLot * Math.Max(1, plan.Placements) * plan.CoveredSweeps;
        double sweeps = covered + plan.FloorSweeps + plan.ReferenceSweeps
            + ((double)plan.LinearitySourcesDbm.Length * plan.LinearitySweeps) + plan.PlateSweeps;
        double specimens = (double)plan.Lots * plan.SpecimensPerLot;
        Require(sweeps <= MostSweeps && specimens <= MostSweeps, $"no more than {MostSweeps} sweeps in all");
        double readings = sweeps * plan.Points;
        Require(readings <= MostReadings, $"no more than {MostReadings} points in all sweeps together");
        bool each = plan.Averaging is Averaging.Log or Averaging.Peak or Averaging.Lowest;
        Require(!each || readings * plan.Looks <= MostLooks,
            $"no more than {MostLooks} looks in all points of all sweeps together");
    }

    private static void CheckFigures(RehearsalPlan plan)
    {
        Require(Figures(plan).All(figure => Math.Abs(figure) <= MostDb), $"figures between -{MostDb} and {MostDb} dB or dBm");
        Require(plan.Looks <= MostLooksOfOne, $"no more than {MostLooksOfOne} looks of a reading");
        Require(plan.Cycles.All(cycles => Math.Abs(cycles) <= MostCycles && Math.Abs(cycles * plan.WearDb) <= MostDb),
            $"no more than {MostCycles} cycles, and no more than {MostDb} dB of wear");
        Require(plan.Band.Stop.Value <= MostHertz, $"a band below {MostHertz} Hz");
    }

    private static double[] Figures(RehearsalPlan plan) =>
    [
        plan.ShieldingStartDb, plan.ShieldingStopDb, plan.LotDeviationDb, plan.SpecimenDeviationDb, plan.PlacementDeviationDb,
        plan.SweepDeviationDb, plan.ScatterDb, plan.PlacementScatterDb, plan.FloorDbm, plan.FloorTiltDb, plan.ReferenceDbm,
        plan.ReferenceRippleDb, plan.QuantisationDb, plan.SourceDbm, plan.DriftDb, plan.JumpDb, plan.CompressionDbm ?? 0,
        plan.LimitDbm ?? 0, plan.PlateDb ?? 0, .. plan.LotSpreads, .. plan.LinearitySourcesDbm,
        .. plan.LotSteps.Select(step => step.Change.Value),
        .. plan.OddSweeps.SelectMany(odd => new[] { odd.OffsetDb, odd.ShapeDb }),
        .. plan.Ambient.Select(carrier => carrier.AboveFloor.Value),
    ];

    private static void CheckSteps(RehearsalPlan plan)
    {
        string[] lots = [.. Enumerable.Range(0, plan.LotSteps.IsEmpty ? 0 : plan.Lots).Select(Rehearser.LotName)];
        foreach (LotStep step in plan.LotSteps)
        {
            Require(lots.Contains(step.Lot), $"the lot {step.Lot} that is to have a step, and there "
                + $"{(lots.Length == 1 ? "is" : "are")} only {string.Join(", ", lots)}");
            Require(double.IsFinite(step.Change.Value), $"a step of lot {step.Lot} that is a number");
        }
    }

    private static void CheckFaults(RehearsalPlan plan)
    {
        Require(plan.LinearitySweeps >= 1, "at least 1 linearity sweep at a source level");
        Require(plan.LinearitySourcesDbm.Distinct().Count() == plan.LinearitySourcesDbm.Length,
            "source levels of linearity sweeps that differ");
        Require(plan.PlateSweeps >= 0, "0 or more plate sweeps");
        Require(plan.PlateDb is null or >= 0, "a leak that arrives 0 dB or more below the reference");
        Require(plan.SecondsPerSweep is > 0 and <= 604_800, "a time from sweep to sweep above 0 and up to a week");
        Require(plan.JumpShare is >= 0 and <= 1 && plan.Ambient.All(carrier => carrier.Share is >= 0 and <= 1),
            "shares from 0 to 1");
        foreach (OddSweep odd in plan.OddSweeps)
        {
            string role = odd.Role.ToString().ToLowerInvariant();
            Require(odd.Number >= 1 && odd.Number <= Count(plan, odd.Role), $"the {role} sweep {odd.Number} that is to be odd");
            Require(odd.ShapeDb >= 0, "a standing wave of a size that is not negative");
        }
    }

    private static int Count(RehearsalPlan plan, SweepRole role) => role switch
    {
        SweepRole.Floor => plan.FloorSweeps,
        SweepRole.Reference => plan.ReferenceSweeps,
        SweepRole.Linearity => plan.LinearitySourcesDbm.Length * plan.LinearitySweeps,
        SweepRole.Plate => plan.PlateSweeps,
        _ => plan.Lots * plan.SpecimensPerLot * Math.Max(1, plan.Placements) * plan.CoveredSweeps,
    };

    private static void Require(bool held, string wanted)
    {
        if (!held)
        {
            throw new ArgumentException($"A rehearsal needs {wanted}.");
        }
    }
}
