using SweepStats.Doubts;
using SweepStats.Shielding;

namespace SweepStats.Report.Specimens;

/// <summary>Why only bounds are known where values are missing: what hides them, and what would tell.</summary>
/// <remarks>
/// An overloaded receiver wants less level, a floor in the way more of it, and leakage neither: the advice for one makes the
/// other worse.
/// </remarks>
/// <param name="Floor">The floor hides some reading.</param>
/// <param name="Overload">The receiver was overloaded at some reading.</param>
/// <param name="Leakage">Leakage round the specimen hides some reading.</param>
/// <param name="Bottom">The display ends above some reading.</param>
/// <param name="Unmeasured">Nobody knows the floor at some reading.</param>
/// <param name="Plate">The noise of the plate sweeps may hide a leakage that makes some reading alone.</param>
internal sealed record BoundCauses(bool Floor, bool Overload, bool Leakage = false, bool Bottom = false, bool Unmeasured = false,
    bool Plate = false)
{
    /// <summary>The causes among the readings of some specimens.</summary>
    public static BoundCauses Of(IEnumerable<ShieldingCurve> curves) =>
        curves.Aggregate(new BoundCauses(Floor: false, Overload: false), (before, curve) => before.And(curve.Readings.Bounded()));

    /// <summary>The causes among some readings.</summary>
    public static BoundCauses Of(IEnumerable<ShieldingReading> readings) =>
        new BoundCauses(Floor: false, Overload: false).And(readings);

    /// <summary>The causes that stand against one reading.</summary>
    public static BoundCauses Of(ReadingDoubts doubts) => new(
        (doubts & (ReadingDoubts.CoveredAtBottom | ReadingDoubts.FloorMoved)) != 0,
        (doubts & (ReadingDoubts.ReferenceOverloaded | ReadingDoubts.CoveredOverloaded)) != 0);

    // A page asks this of every reading of a campaign several times over.
    private BoundCauses And(IEnumerable<ShieldingReading> readings)
    {
        (bool floor, bool overload, bool leakage, bool bottom, bool unmeasured, bool plate) =
            (Floor, Overload, Leakage, Bottom, Unmeasured, Plate);
        foreach (ShieldingReading reading in readings)
        {
            bool capped = reading.State == ShieldingState.Capped;
            bool behind = capped && reading.Evidence.HiddenBehindPlate && !AtBottom(reading);
            floor |= capped && !behind && !reading.Evidence.LeakageRules && !AtBottom(reading);
            plate |= behind;
            leakage |= capped && reading.Evidence.LeakageRules;
            bottom |= capped && AtBottom(reading);
            overload |= reading.State == ShieldingState.Overloaded;
            unmeasured |= reading.State == ShieldingState.NoFloor;
        }

        return new BoundCauses(floor, overload, leakage, bottom, unmeasured, plate);
    }

    private static bool AtBottom(ShieldingReading reading) => reading.Evidence.Doubts.HasFlag(ReadingDoubts.CoveredAtBottom);

    /// <summary>Whether there is any.</summary>
    public bool Any => Floor || Overload || Leakage || Bottom || Unmeasured || Plate;

    /// <summary>
    /// What hides the rest: "the floor", or "overload of the receiver"; where nothing is known of it, the floor.
    /// </summary>
    public string What => string.Join(" or ", Chosen(
        "the floor", "the bottom of the display", "leakage", "the noise of the plate sweeps", "overload of the receiver",
        "an unknown floor"));

    /// <summary>What will show it: "more dynamic range tells".</summary>
    public string Tells => Remedy + (Remedies.Length > 1 || Remedy.StartsWith("sweeps", StringComparison.Ordinal)
        || Remedy.EndsWith("sweeps", StringComparison.Ordinal) ? " tell" : " tells");

    /// <summary>What would show it, as a sentence.</summary>
    public string WouldTell => $"{char.ToUpperInvariant(Remedy[0])}{Remedy[1..]} would tell.";

    private string[] Remedies => Chosen(
        "more dynamic range", "a lower bottom of the display", "better isolation", "more plate sweeps", "sweeps without overload",
        "floor sweeps");

    private string Remedy => string.Join(" and ", Remedies);

    private string[] Chosen(string floor, string bottom, string leakage, string plate, string overload, string unmeasured) =>
    [
        .. Floor || !Any ? [floor] : Array.Empty<string>(),
        .. Bottom ? [bottom] : Array.Empty<string>(),
        .. Leakage ? [leakage] : Array.Empty<string>(),
        .. Plate ? [plate] : Array.Empty<string>(),
        .. Overload ? [overload] : Array.Empty<string>(),
        .. Unmeasured ? [unmeasured] : Array.Empty<string>(),
    ];
}
