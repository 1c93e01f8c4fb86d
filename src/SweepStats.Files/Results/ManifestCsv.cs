using System.Globalization;
using SweepStats.Sweeps;

namespace SweepStats.Files.Results;

/// <summary>sweeps.csv of a campaign that is written: what neither the folders' names nor the traces tell.</summary>
internal static class ManifestCsv
{
    private const string Header = "file,role,lot,specimen,placement,taken_at,source_dbm,exclude";

    /// <summary>Whether a sweep holds anything that its path does not say.</summary>
    public static bool IsNeeded(Campaign campaign) =>
        campaign.Sweeps.Any(s => s.TakenAt is not null || s.SourceDbm is not null || s.ExcludedBecause is not null)
        || !campaign.Properties.IsEmpty;

    public static void Write(Campaign campaign, Stream to)
    {
        string[] own = [.. campaign.Properties.Select(p => p.Name).Distinct()];
        Dictionary<(string?, string?, string), string> said =
            campaign.Properties.ToDictionary(p => ((string?)p.Specimen.Lot, (string?)p.Specimen.Specimen, p.Name), p => p.Text);
        using var rows = new CsvRows(to, Header, own);
        foreach (Sweep sweep in campaign.Sweeps)
        {
            rows.Text(sweep.Name).Cell(sweep.Role.ToString().ToLowerInvariant())
                .Text(sweep.Lot).Text(sweep.Specimen).Text(sweep.Placement)
                .Cell(sweep.TakenAt?.ToString("yyyy-MM-ddTHH:mm:ss.FFFFFFFK", CultureInfo.InvariantCulture) ?? "")
                .Cell(sweep.SourceDbm?.ToString("R", CultureInfo.InvariantCulture) ?? "")
                .Text(sweep.ExcludedBecause);
            foreach (string property in own)
            {
                rows.Text(said.GetValueOrDefault((sweep.Lot, sweep.Specimen, property)));
            }

            rows.End();
        }
    }
}
