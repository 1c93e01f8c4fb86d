using SweepStats.Shielding;
using SweepStats.Verdicts;

namespace SweepStats.Studies.Benches;

/// <summary>How a reading stands to the truth.</summary>
internal enum Standing
{
    /// <summary>No interval and no bound.</summary>
    Nothing,

    /// <summary>An interval that holds the truth.</summary>
    Inside,

    /// <summary>An interval whose lower end lies over the truth: too much is claimed.</summary>
    LowOver,

    /// <summary>An interval whose upper end lies under the truth.</summary>
    HighUnder,

    /// <summary>A bound that the truth reaches.</summary>
    BoundHolds,

    /// <summary>A bound over the truth: too much is claimed.</summary>
    BoundOver,
}

/// <summary>One reading beside the truth.</summary>
/// <param name="Truth">What is true.</param>
/// <param name="Standing">How the reading stands to it.</param>
/// <param name="WidthDb">Width of the interval; not a number where it has not two ends.</param>
/// <param name="OverRangeDb">True shielding less the reported dynamic range; not a number where none is reported.</param>
/// <param name="Decision">How the reading stands to the requirement; null where nothing is asked.</param>
internal sealed record JudgedReading(
    TruePoint Truth, Standing Standing, double WidthDb, double OverRangeDb, FrequencyDecision? Decision)
{
    public bool TwoSided => Standing is Standing.Inside or Standing.LowOver or Standing.HighUnder;

    public bool Bound => Standing is Standing.BoundHolds or Standing.BoundOver;

    public bool Held => Standing is Standing.Inside or Standing.BoundHolds;

    /// <summary>Whether the truth is as much as is asked; null where nothing is asked.</summary>
    public bool? Conforms => Decision is null ? null : Truth.ShieldingDb >= Decision.Required.Value;

    public bool FalseMeets => Conforms == false && Decision!.Outcome == RequirementOutcome.Meets;

    public bool FalseFails => Conforms == true && Decision!.Outcome == RequirementOutcome.Fails;

    /// <summary>Holds a reading against the truth.</summary>
    public static JudgedReading Of(ShieldingReading reading, TruePoint truth, FrequencyDecision? decision)
    {
        double over = reading.Evidence.DynamicRange is { } range ? truth.ShieldingDb - range.Value : double.NaN;
        double width = reading is ShieldingReading.Measured m ? m.Shielding.High.Value - m.Shielding.Low.Value : double.NaN;
        return new JudgedReading(truth, StandingOf(reading, truth.ShieldingDb), width, over, decision);
    }

    private static Standing StandingOf(ShieldingReading reading, double truth) => reading switch
    {
        ShieldingReading.Measured m when m.Shielding.Low.Value > truth => Standing.LowOver,
        ShieldingReading.Measured m when m.Shielding.High.Value < truth => Standing.HighUnder,
        ShieldingReading.Measured => Standing.Inside,
        ShieldingReading.AtLeast b => b.Bound.Value <= truth ? Standing.BoundHolds : Standing.BoundOver,
        _ => Standing.Nothing,
    };
}
