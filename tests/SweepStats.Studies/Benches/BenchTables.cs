using System.Globalization;
using System.Text;
using SweepStats.Studies.Trust;

namespace SweepStats.Studies.Benches;

/// <summary>The tallies as tables: a row a kind and range, a row a kind and finding, a row a kind and distance to the reported range.</summary>
internal static class BenchTables
{
    private const string Header =
        "kind,part,campaigns,refused,readings,nothing,two_sided,two_sided_held,bounds,bounds_held,held_percent,held_low_percent,held_high_percent,"
        + "held_error_percent,low_over_truth,high_under_truth,median_width_db,trusted_claims,trusted_held,conforming,not_conforming,false_meets,false_fails,"
        + "trustworthy,limited,untrustworthy,specimens_asked,specimens_false_meets,specimens_false_fails\n";

    /// <summary>A row a kind and range; figures of campaigns and specimens stand in the row of all readings.</summary>
    public static string Readings(IEnumerable<KindTally> kinds) =>
        Header + string.Concat(kinds.SelectMany(kind => kind.Parts.Select(part => Row(kind, part.Key, part.Value))));

    /// <summary>A row a kind, code and severity: campaigns in which it came.</summary>
    public static string Findings(IEnumerable<KindTally> kinds) =>
        "kind,severity,code,campaigns,of\n" + string.Concat(kinds.SelectMany(kind => kind.Found.Select(found => string.Create(
            CultureInfo.InvariantCulture,
            $"{kind.Kind},{Word(found.Key.Severity)},{found.Key.Code},{found.Value},{kind.Campaigns - kind.Refused}\n"))));

    /// <summary>A row a kind and dB of true shielding less the reported dynamic range, from 10 dB under to 10 dB over.</summary>
    public static string OverRange(IEnumerable<KindTally> kinds) =>
        "kind,truth_less_range_db,readings,two_sided,two_sided_percent,held_percent\n" + string.Concat(kinds.SelectMany(kind => kind.OverRange
            .Where(bin => Math.Abs(bin.Key) <= 10)
            .Select(bin => string.Create(
                CultureInfo.InvariantCulture,
                $"{kind.Kind},{bin.Key},{bin.Value.Readings},{bin.Value.TwoSided},{Percent(bin.Value.TwoSided, bin.Value.Readings)},{Percent(bin.Value.Held)}\n"))));

    /// <summary>A row a campaign, for looking closer.</summary>
    public static string Details(string kind, IEnumerable<BenchCampaign> campaigns)
    {
        var text = new StringBuilder();
        foreach (BenchCampaign c in campaigns)
        {
            string found = string.Join(' ', c.Findings.Where(f => f.Value > Checks.Severity.Note).Select(f => $"{f.Key}:{Word(f.Value)}"));
            string said = c.Refusal is null ? Word(c.Trust) : "refused";
            text.Append(
                CultureInfo.InvariantCulture,
                $"{kind},{c.Number},{said},{c.Readings.Length},{c.Readings.Count(r => r.TwoSided)},{c.Readings.Count(r => r.Bound)},{c.Readings.Count(r => r.Held)},{found}\n");
        }

        return text.ToString();
    }

    public const string DetailsHeader = "kind,campaign,trust,readings,two_sided,bounds,held,findings\n";

    private static string Row(KindTally kind, string part, ReadingTally t)
    {
        bool all = part == KindTally.All;
        string held = t.Held.Of == 0
            ? ",,,"
            : string.Create(CultureInfo.InvariantCulture, $"{Percent(t.Held)},{100 * t.Held.Limits.Low:0.00},{100 * t.Held.Limits.High:0.00},{Number(t.HeldErrorPercent)}");
        string whole = all
            ? string.Create(CultureInfo.InvariantCulture, $"{Count(kind, Verdicts.Trust.Trustworthy)},{Count(kind, Verdicts.Trust.Limited)},{Count(kind, Verdicts.Trust.Untrustworthy)},{kind.Asked},{kind.FalseMeets},{kind.FalseFails}")
            : ",,,,,";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{kind.Kind},{part},{kind.Campaigns},{kind.Refused},{t.Readings},{t.Nothing},{t.TwoSided},{t.TwoSidedHeld},{t.Bounds},{t.BoundsHeld},{held},{t.LowOver},{t.HighUnder},{Number(t.MedianWidthDb)},{t.TrustedClaims},{t.TrustedHeld},{t.Conforming},{t.NotConforming},{t.FalseMeets},{t.FalseFails},{whole}\n");
    }

    private static int Count(KindTally kind, Verdicts.Trust trust) => kind.Trusted.GetValueOrDefault(trust);

    private static string Percent(Share share) => Percent(share.Count, share.Of);

    private static string Percent(int count, int of) => of == 0 ? "" : Number(100.0 * count / of);

    private static string Number(double value) => double.IsFinite(value) ? value.ToString("0.00", CultureInfo.InvariantCulture) : "";

    private static string Word<T>(T value)
        where T : struct, Enum => value.ToString().ToLowerInvariant();
}
