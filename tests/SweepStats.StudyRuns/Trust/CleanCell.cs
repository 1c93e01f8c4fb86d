using SweepStats.Rehearsal;
using SweepStats.Sweeps;

namespace SweepStats.StudyRuns.Trust;

/// <summary>One combination of circumstances under which nothing is wrong.</summary>
/// <remarks>
/// 201 points; the reference stands 70 dB over the floor with a ripple of 3 dB; the shielding rises from 20 to 50 dB; 0.2 dB of
/// scatter from point to point and 0.1 dB of offset from sweep to sweep. Linearity sweeps at three source levels 10 dB apart;
/// what comes round the plate lies 40 dB under the noise. Half of the campaigns name three placements, 0.2 dB apart, and half
/// have times.
/// </remarks>
/// <param name="Drawn">How the rehearsed receiver averages.</param>
/// <param name="Stated">What the analysis is told of it.</param>
/// <param name="Looks">Looks in a reading.</param>
/// <param name="Sweeps">Sweeps of each role: of each source level, and of each placement.</param>
/// <param name="Specimens">Specimens.</param>
public sealed record CleanCell(Averaging Drawn, Averaging Stated, double Looks, int Sweeps, int Specimens = 1)
{
    private const int Placements = 3;
    private static readonly DateTimeOffset Morning = new(2026, 3, 5, 8, 0, 0, TimeSpan.Zero);

    /// <summary>The campaign of a number: placements in every other, times in every other pair.</summary>
    public TrustCase Case(int number)
    {
        TrustCase plain = Case(placements: number % 2 == 1);
        return number / 2 % 2 == 1 ? plain with { Drawn = plain.Drawn with { StartsAt = Morning } } : plain;
    }

    /// <summary>The campaign without times, its placements named or not.</summary>
    public TrustCase Case(bool placements) => new(
        new RehearsalPlan
        {
            FloorSweeps = Sweeps,
            ReferenceSweeps = Sweeps,
            CoveredSweeps = Sweeps,
            LinearitySourcesDbm = [-10, 0, 10],
            LinearitySweeps = Sweeps,
            PlateDb = 110,
            PlateSweeps = Sweeps,
            SpecimensPerLot = Specimens,
            Placements = placements ? Placements : 0,
            PlacementDeviationDb = placements ? 0.2 : 0,
            SweepDeviationDb = 0.1,
            ScatterDb = 0.2,
            ShieldingStartDb = 20,
            ShieldingStopDb = 50,
            ReferenceDbm = -30,
            ReferenceRippleDb = 3,
            FloorDbm = -100,
            Averaging = Drawn,
            Looks = Looks,
        },
        new AnalysisPlan { Averaging = Stated });
}
