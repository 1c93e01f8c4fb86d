using SweepStats.Linearity;
using SweepStats.Repeats;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// A reference that reads lower than linearity sweeps of less source power: it was not taken with nothing in the way.
/// </summary>
/// <remarks>
/// A receiver that is overloaded shows too little of a step, but never less of more power. So the reference, and not the
/// receiver, is wrong.
/// </remarks>
internal static class MistakenReference
{
    // A cable or an antenna that was moved makes less of a difference.
    private const double LowerByDb = 3;

    /// <summary>One finding, a fault of the given code; none where <see cref="Step"/> finds no step.</summary>
    public static IEnumerable<Finding> In(Evidence seen, string code)
    {
        if (Step(seen) is not { } step)
        {
            yield break;
        }

        double lower = step.ShortfallDb - (step.HighDbm - step.LowDbm);
        double[] middle = KindCurve.Of(seen.Campaign.Reference).MiddleDb.ToArray();
        KindCurve? like = seen.Campaign.Covered.Select(c => KindCurve.Of(c.Block, c.Name)).Where(k => k.IsLike(middle))
            .MinBy(k => k.AwayDb(middle));
        yield return new Finding
        {
            Code = code,
            Severity = Severity.Fault,
            Role = SweepRole.Reference,
            Size = new(lower),
            Bias = Bias.Unknown,
            Misleads = true,
            Message = $"The reference reads {Amount.Db(lower)} below linearity sweeps that had "
                + $"{Amount.Db(step.HighDbm - step.LowDbm)} less source power{Like(like)}.",
            Basis = $"Means over {Amount.Count(step.PointCount, "frequency", "frequencies")} of "
                + $"{Amount.Count(step.LowSweeps, "linearity sweep", "linearity sweeps")} and {step.HighSweeps} of the "
                + "reference; "
                + $"told from {Amount.Db(LowerByDb)} on, since overload never shows less of more power.",
            NextStep = "Look whether the specimen was left on while the reference was taken, or files were exchanged: "
                + "put each where it belongs, or take the reference again.",
        };
    }

    /// <summary>The step of the source that the reference falls in; null where it does not, or nothing tells.</summary>
    public static LinearityStep? Step(Evidence seen) => seen.Linearity?.Reference is { } step && !ExchangedPlate.IsLikely(seen)
        && step.ShortfallDb - (step.HighDbm - step.LowDbm) >= LowerByDb ? step : null;

    private static string Like(KindCurve? like) =>
        like is null ? string.Empty : $", and like {WrongKind.Kind(like.Role, like.Specimen, one: false)}";
}
