using System.Globalization;
using System.Text;
using SweepStats.Checks;
using SweepStats.Studies.Trust;

namespace SweepStats.Studies.Benches;

/// <summary>The tallies on one page.</summary>
internal static class BenchDigest
{
    public static string Of(IReadOnlyCollection<KindTally> kinds) =>
        $"# Benches where the model does not hold\n\n{Drawn}\n\n## Intervals\n\n{Intervals(kinds)}\n## Trust and findings\n\n{Found(kinds)}\n## Verdicts\n\n{Verdicts(kinds)}";

    private const string Drawn =
        "Campaigns are drawn by the R scripts in `fixtures/oracles/benches`, which share nothing with the program. Held: the truth lies inside the interval, or at or over the bound; "
        + "in brackets the binomial 95 % limits, which take readings for independent, and the standard error by how campaigns differ. Shares of claims unless said otherwise.";

    private static string Intervals(IReadOnlyCollection<KindTally> kinds)
    {
        var text = new StringBuilder(
            "| kind | range | campaigns (refused) | readings | nothing claimed | two-sided | held | lower end over the truth | upper end under the truth | width, median | held where called trustworthy |\n"
            + "|---|---|---|---|---|---|---|---|---|---|---|\n");
        foreach (KindTally kind in kinds)
        {
            foreach ((string part, ReadingTally tally) in kind.Parts)
            {
                text.Append(CultureInfo.InvariantCulture, $"| {kind.Kind} | {part} | {kind.Campaigns} ({kind.Refused}) | {Cells(tally)} |\n");
            }
        }

        return text.ToString();
    }

    private static string Cells(ReadingTally t)
    {
        int claims = t.Held.Of;
        string error = double.IsNaN(t.HeldErrorPercent) ? "" : string.Create(CultureInfo.InvariantCulture, $" ± {t.HeldErrorPercent:0.0}");
        string held = claims == 0 ? "" : $"{t.Held.WithLimits}{error}, {t.Held.Count} of {claims}";
        string width = double.IsNaN(t.MedianWidthDb) ? "" : string.Create(CultureInfo.InvariantCulture, $"{t.MedianWidthDb:0.00} dB");
        return string.Join(" | ", t.Readings, Of(t.Nothing, t.Readings), Of(t.TwoSided, t.Readings), held, Of(t.LowOver, claims), Of(t.HighUnder, claims), width, Of(t.TrustedHeld, t.TrustedClaims));
    }

    private static string Found(IReadOnlyCollection<KindTally> kinds)
    {
        var text = new StringBuilder("| kind | trustworthy | limited | untrustworthy | warnings and faults: share of campaigns |\n|---|---|---|---|---|\n");
        foreach (KindTally kind in kinds)
        {
            int read = kind.Campaigns - kind.Refused;
            IEnumerable<string> codes = kind.Found.Where(f => f.Key.Severity > Severity.Note)
                .Select(f => $"{f.Key.Code} {(f.Key.Severity == Severity.Fault ? "(fault) " : "")}{Of(f.Value, read)}");
            string Said(SweepStats.Verdicts.Trust trust) => Of(kind.Trusted.GetValueOrDefault(trust), read);
            string said = kind.Refusal is null ? string.Join("; ", codes) : string.Join("; ", codes.Prepend($"refused: {kind.Refusal}"));
            text.Append(
                CultureInfo.InvariantCulture,
                $"| {kind.Kind} | {Said(SweepStats.Verdicts.Trust.Trustworthy)} | {Said(SweepStats.Verdicts.Trust.Limited)} | {Said(SweepStats.Verdicts.Trust.Untrustworthy)} | {said} |\n");
        }

        return text.ToString();
    }

    private static string Verdicts(IEnumerable<KindTally> kinds)
    {
        var text = new StringBuilder(
            "| kind | specimens asked about | said to meet, and do not | said to fail, and do not | readings: false \"meets\" of those that do not conform | false \"fails\" of those that conform |\n"
            + "|---|---|---|---|---|---|\n");
        foreach (KindTally kind in kinds.Where(k => k.Asked > 0))
        {
            ReadingTally t = kind.Total;
            text.Append(
                CultureInfo.InvariantCulture,
                $"| {kind.Kind} | {kind.Asked} | {kind.FalseMeets} | {kind.FalseFails} | {t.FalseMeets} of {t.NotConforming} | {t.FalseFails} of {t.Conforming} |\n");
        }

        return text.ToString();
    }

    private static string Of(int count, int of) => of == 0 ? "" : new Share(count, of).Percent;
}
