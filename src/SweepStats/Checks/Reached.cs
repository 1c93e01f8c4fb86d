using SweepStats.Shielding;

namespace SweepStats.Checks;

/// <summary>Whether bounds are enough for what is asked.</summary>
internal static class Reached
{
    /// <summary>Whether something is asked at some of the readings, and they all meet it.</summary>
    public static bool By(ShieldingCurve curve, IEnumerable<int> readings, Evidence seen)
    {
        int[] asked = [.. readings.Where(f => seen.Rule?.Requirement.At(curve.Readings[f].Evidence.At) is not null)];
        var limits = new OneSidedLimits(curve);
        return asked.Length > 0
            && asked.All(f => seen.Rule!.IsMet(curve.Readings[f], limits.Low(f, seen.Rule.Level.Level)) == true);
    }
}
