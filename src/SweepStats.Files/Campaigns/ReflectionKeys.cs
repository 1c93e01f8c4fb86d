using SweepStats.Quantities;

namespace SweepStats.Files.Campaigns;

/// <summary>
/// The reflection of a side, "source" or "load", in one of three ways: magnitude, standing wave ratio or return loss.
/// </summary>
internal static class ReflectionKeys
{
    private static readonly string[] Sides = ["source", "load"];

    public static bool Any(KeyReader keys) => Sides.Any(side => Of(side).Any(keys.Has));

    /// <summary>The reflection; null where none, several or a wrong one is stated.</summary>
    public static Reflection? Read(KeyReader keys, string side)
    {
        string[] ways = Of(side);
        double? magnitude = keys.Number(ways[0], 0, 1);
        double? ratio = keys.Number(ways[1], 1, 1e6);
        double? loss = keys.Number(ways[2], 0, 200);
        string[] stated = [.. ways.Where(keys.Has)];
        if (stated.Length > 1)
        {
            keys.Refuse(stated[^1], $"the reflection of the {side} is stated in more than one way",
                $"keep one of {string.Join(", ", stated)}");
            return null;
        }

        return magnitude is { } m ? new Reflection(m)
            : ratio is { } s ? Reflection.OfStandingWaveRatio(s)
            : loss is { } db ? Reflection.OfReturnLoss(new Decibels(db)) : null;
    }

    /// <summary>Tells of a side that is missing.</summary>
    public static void RequireBoth(KeyReader keys)
    {
        foreach (string side in Sides.Where(side => !Of(side).Any(keys.Has)))
        {
            string[] ways = Of(side);
            keys.Refuse(Written(keys, Sides.Single(s => s != side)),
                $"a mismatch takes two reflections, and that of the {side} is missing", $"add {ways[0]}, {ways[1]} or {ways[2]}");
        }
    }

    /// <summary>The key by which a side is stated.</summary>
    public static string Written(KeyReader keys, string side) => Of(side).First(keys.Has);

    private static string[] Of(string side) => [$"reflection_{side}", $"vswr_{side}", $"return_loss_{side}_db"];
}
