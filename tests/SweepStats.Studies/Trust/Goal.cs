using System.Collections.Immutable;
using SweepStats.StudyRuns.Trust;

namespace SweepStats.Studies.Trust;

/// <summary>A fault that is to be found in nearly every campaign.</summary>
/// <param name="Says">The fault in words.</param>
/// <param name="Covers">Which rows of the study are this fault, or a larger one of its kind.</param>
internal sealed record Goal(string Says, Func<DetectionRow, bool> Covers)
{
    /// <summary>Least share of campaigns in which it is found.</summary>
    public const double Least = 0.95;

    public static ImmutableArray<Goal> All { get; } =
    [
        new("0.5 dB of compression", r => r.Code == "saturation-step" && r.Size == 0.5),
        new("1 dB of drift", r => r.Code == "drift" && r.Size == 1),
        new("one sweep of five off by 2 dB",
            r => r.Code == "odd-sweep" && r.Name.StartsWith("offset", StringComparison.Ordinal) && r.Size == 2),
        new("a carrier 10 dB over the floor", r => r.Code == "ambient" && r.Size == 10),
        new("clipped tops over 1 % of the band", r => r.Code == "saturation-plateau" && r.Size == 1),
    ];
}
