using System.Globalization;
using SweepStats.Checks;

namespace SweepStats.Studies.Benches;

/// <summary>The tallies as CSV: a row a kind and range, a kind and finding, a kind and distance to the range.</summary>
internal static class BenchTables
{
    /// <summary>The first line of the table of single campaigns.</summary>
    public const string DetailsHeader = "kind,campaign,trust,readings,two_sided,bounds,held,findings\n";

    private const string ReadingsHeader =
        "kind,part,campaigns,refused,readings,nothing,two_sided,two_sided_held,bounds,bounds_held,"
        + "held_percent,held_low_percent,held_high_percent,held_error_percent,low_over_truth,high_under_truth,median_width_db,"
        + "trusted_claims,trusted_held,conforming,not_conforming,false_meets,false_fails,"
        + "trustworthy,limited,untrustworthy,specimens_asked,specimens_false_meets,specimens_false_fails\n";

    /// <summary>Whether a kind draws specimens around the end of the range.</summary>
    public static bool HasLadder(KindTally kind) => kind.Kind.StartsWith("range", StringComparison.Ordinal);

    /// <summary>A row a kind and range; figures of campaigns and specimens stand in the row of all readings.</summary>
    public static string Readings(IEnumerable<KindTally> kinds) => ReadingsHeader + string.Concat(
        from kind in kinds
        from part in kind.Parts
        select Line([kind.Kind, part.Key, kind.Campaigns, kind.Refused, .. Counts(part.Value), .. Whole(kind, part.Key)]));

    /// <summary>A row a kind, code and severity: campaigns in which it came.</summary>
    public static string Findings(IEnumerable<KindTally> kinds) => "kind,severity,code,campaigns,of\n" + string.Concat(
        from kind in kinds
        from found in kind.Found
        select Line([
            kind.Kind, BenchFigures.Word(found.Key.Severity), found.Key.Code, found.Value, kind.Campaigns - kind.Refused]));

    /// <summary>A row a kind and dB of true shielding less the reported dynamic range, from 10 dB under to 10 dB over.</summary>
    public static string OverRange(IEnumerable<KindTally> kinds) =>
        "kind,truth_less_range_db,readings,two_sided,two_sided_percent,held_percent\n" + string.Concat(
        from kind in kinds
        from bin in kind.OverRange
        where Math.Abs(bin.Key) <= 10
        select Line([kind.Kind, bin.Key, .. Shares(bin.Value)]));

    /// <summary>A row of one campaign, for looking closer.</summary>
    public static string Details(string kind, BenchCampaign campaign)
    {
        IEnumerable<string> found = campaign.Findings.Where(f => f.Value > Severity.Note)
            .Select(f => $"{f.Key}:{BenchFigures.Word(f.Value)}");
        string said = campaign.Refusal is null ? BenchFigures.Word(campaign.Trust) : "refused";
        int Count(Func<JudgedReading, bool> which) => campaign.Readings.Count(which);
        return Line([
            kind, campaign.Number, said, campaign.Readings.Length,
            Count(r => r.TwoSided), Count(r => r.Bound), Count(r => r.Held), string.Join(' ', found)]);
    }

    private static object[] Counts(ReadingTally t) =>
    [
        t.Readings, t.Nothing, t.TwoSided, t.TwoSidedHeld, t.Bounds, t.BoundsHeld, .. HeldPercent(t),
        t.LowOver, t.HighUnder, BenchFigures.Number(t.MedianWidthDb), t.TrustedClaims, t.TrustedHeld,
        t.Conforming, t.NotConforming, t.FalseMeets, t.FalseFails,
    ];

    private static object[] HeldPercent(ReadingTally t) => t.Held.Of == 0
        ? ["", "", "", ""]
        : [.. new[] { t.Held.Value, t.Held.Limits.Low, t.Held.Limits.High }.Select(s => BenchFigures.Number(100 * s)),
            BenchFigures.Number(t.HeldErrorPercent)];

    private static object[] Whole(KindTally kind, string part) => part != KindTally.All
        ? ["", "", "", "", "", ""]
        : [.. Enum.GetValues<Verdicts.Trust>().Select(kind.CountOf).Cast<object>(), kind.Asked, kind.FalseMeets, kind.FalseFails];

    private static object[] Shares(ReadingTally t) =>
        [t.Readings, t.TwoSided, BenchFigures.Percent(t.TwoSided, t.Readings), BenchFigures.Percent(t.Held.Count, t.Held.Of)];

    private static string Line(object[] cells) =>
        string.Join(',', cells.Select(c => Convert.ToString(c, CultureInfo.InvariantCulture))) + "\n";
}
