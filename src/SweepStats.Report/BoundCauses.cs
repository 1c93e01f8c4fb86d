using SweepStats.Doubts;
using SweepStats.Shielding;

namespace SweepStats.Report;

/// <summary>Why only bounds are known where values are missing: what hides them, and what would tell.</summary>
/// <remarks>An overloaded receiver wants less level, a floor in the way more of it: the advice for one makes the other worse.</remarks>
/// <param name="Floor">The floor hides some reading.</param>
/// <param name="Overload">The receiver was overloaded at some reading.</param>
internal sealed record BoundCauses(bool Floor, bool Overload)
{
    /// <summary>The causes among the readings of some specimens.</summary>
    public static BoundCauses Of(IEnumerable<ShieldingCurve> curves) => Of(curves.SelectMany(c => c.Readings));

    /// <summary>The causes among some readings.</summary>
    public static BoundCauses Of(IEnumerable<ShieldingReading> readings)
    {
        ShieldingState[] states = [.. readings.Select(r => r.State).Distinct()];
        return new BoundCauses(states.Contains(ShieldingState.Capped), states.Contains(ShieldingState.Overloaded));
    }

    /// <summary>The causes that stand against one reading.</summary>
    public static BoundCauses Of(ReadingDoubts doubts) => new(
        (doubts & (ReadingDoubts.CoveredAtBottom | ReadingDoubts.FloorMoved)) != 0,
        (doubts & (ReadingDoubts.ReferenceOverloaded | ReadingDoubts.CoveredOverloaded)) != 0);

    /// <summary>What hides the rest: "the floor", or "overload of the receiver".</summary>
    public string What => !Overload ? "the floor" : Floor ? "the floor or overload of the receiver" : "overload of the receiver";

    /// <summary>What will show it: "more dynamic range tells".</summary>
    public string Tells => Remedy + (Floor && Overload ? " tell" : " tells");

    /// <summary>What would show it, as a sentence.</summary>
    public string WouldTell => $"{char.ToUpperInvariant(Remedy[0])}{Remedy[1..]} would tell.";

    private string Remedy => !Overload ? "more dynamic range" : Floor ? "more dynamic range and a reference without overload" : "a reference without overload";
}
