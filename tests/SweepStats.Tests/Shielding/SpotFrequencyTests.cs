using SweepStats.Rehearsal;
using SweepStats.Shielding;
using Xunit;

namespace SweepStats.Tests.Shielding;

/// <summary>
/// At a single frequency the floor rests on a handful of readings; the range that is named has to allow for it.
/// </summary>
public sealed class SpotFrequencyTests
{
    [Fact]
    public void WhatLiesWithinTheNamedRangeIsBoundedFromBothSides()
    {
        int named = 0, bounded = 0, campaigns = Draws.Of(200);
        foreach (ulong seed in Draws.Seeds(200))
        {
            // 60 dB of reference over floor; the range named scatters about 56 dB.
            ShieldingReading reading = Rehearsed.Analysed(
                new RehearsalPlan
                {
                    Seed = seed,
                    Points = 1,
                    ReferenceDbm = -40,
                    ShieldingStartDb = 54,
                    ShieldingStopDb = 54,
                    ScatterDb = 0.3,
                }).Curves[0].Readings[0];
            bool within = reading.Evidence.DynamicRange!.Value.Value >= 54;
            named += within ? 1 : 0;
            bounded += within && reading is ShieldingReading.Measured ? 1 : 0;
        }

        Assert.InRange(named, 0.3 * campaigns, 0.95 * campaigns);
        Often.AtLeast(bounded, named, 0.95, whenFull: (int)Math.Ceiling(named * (0.95 - (3 * Math.Sqrt(0.05 * 0.95 / named)))));
    }
}
