using SweepStats.Alignment;
using SweepStats.Report.Text;
using SweepStats.Sweeps;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Setup;

/// <summary>Which sweeps count, and every one that does not.</summary>
internal static class SweepWords
{
    internal const string SweepsHeading = "Sweeps";

    internal static readonly string[] UnusedColumns = ["Sweep", "Taken for", "Why"];

    internal static readonly string[] BesideColumns = ["Role", "Sweeps", "What they do", "Names"];

    internal const int MostSweepsNamed = 40;

    internal static IEnumerable<IReadOnlyList<string>> UsedSweeps(AlignedCampaign campaign)
    {
        if (campaign.Floor is { } floor)
        {
            yield return Used("Floor", floor);
        }

        yield return Used("Reference", campaign.Reference);
        foreach (SpecimenBlock covered in campaign.Covered)
        {
            yield return Used("Covered, " + SpecimenLabel(covered.Name), covered.Block);
        }
    }

    /// <summary>Every sweep that was read and is no repeat behind a figure, with the reason.</summary>
    internal static IEnumerable<IReadOnlyList<string>> UnusedSweeps(AnalysisResult result) =>
    [
        .. result.FloorLife is { Lives: false } ? [["all floor sweeps", "floor", "they show no noise (finding dead-floor)"]]
            : Array.Empty<IReadOnlyList<string>>(),
        .. result.Campaign.Excluded.Select(
            s => (IReadOnlyList<string>)[s.Name, TakenFor(s), $"left out by the user: {s.ExcludedBecause}"]),
        .. result.Campaign.Duplicates.Where(d => d.SameKind)
            .Select(d => (IReadOnlyList<string>)[d.Copy.Name, TakenFor(d.Copy),
                $"a copy of {d.Kept.Name}: the same level at every frequency is no repeat"]),
    ];

    /// <summary>Plate and linearity sweeps, which test the measurement and are no part of the shielding.</summary>
    internal static IEnumerable<IReadOnlyList<string>> SweepsBeside(AnalysisResult result) =>
        result.Campaign.SetAside.GroupBy(s => s.Role).OrderBy(g => g.Key).Select(g =>
        {
            (string code, string purpose) = g.Key == SweepRole.Plate ? ("leakage", "ways round the specimen")
                : ("saturation-step", "overload of the receiver");
            string? untested = result.Checks.FirstOrDefault(c => c.Code == code)?.UntestedBecause;
            return (IReadOnlyList<string>)[g.Key.ToString(), Plain(g.Count()),
                untested is null ? $"test for {purpose}" : $"tell little of {purpose}: {untested}", Named([.. g])];
        });

    /// <summary>
    /// The sweeps that the user left out, a line each: "covered/A/A01/3.csv (covered, A/A01, placement 2): door stood open".
    /// </summary>
    internal static IEnumerable<string> LeftOutByUser(AlignedCampaign campaign) =>
        campaign.Excluded.Select(s => PlainText.Of($"{s.Name} ({TakenFor(s)}): {s.ExcludedBecause}"));

    /// <summary>That the user left sweeps out, and where the reasons stand; null where none were.</summary>
    internal static string? SomeLeftOut(AlignedCampaign campaign) => campaign.Excluded.IsEmpty ? null
        : $"{Count(campaign.Excluded.Length, "sweep")} {(campaign.Excluded.Length == 1 ? "was" : "were")} left out by the user; "
            + $"the reasons stand under “{SweepsHeading}”.";

    internal static IEnumerable<IReadOnlyList<string>> OtherFrequencies(AlignedCampaign campaign) =>
        campaign.GridDifferences.Select(d => (IReadOnlyList<string>)[d.Sweep.Name, Plain(d.PointsLeftOut)]);

    private static IReadOnlyList<string> Used(string role, SweepBlock block) =>
        [role, Plain(block.SweepCount), Named(block.Sweeps)];

    private static string Named(IReadOnlyCollection<Sweep> sweeps) => Listed([.. sweeps.Select(s => s.Name)], MostSweepsNamed);

    private static string TakenFor(Sweep sweep)
    {
        string role = sweep.Role.ToString().ToLowerInvariant();
        string piece = sweep.Role == SweepRole.Covered ? $", {SpecimenLabel(SpecimenName.Of(sweep))}" : string.Empty;
        return role + piece + (sweep.Placement is { } placement ? $", placement {placement}" : string.Empty);
    }
}
