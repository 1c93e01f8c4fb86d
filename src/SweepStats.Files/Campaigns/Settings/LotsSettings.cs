namespace SweepStats.Files.Campaigns.Settings;

/// <summary>[lots]: what is asked of lots, and the column of sweeps.csv that puts specimens in an order.</summary>
internal static class LotsSettings
{
    private const string OrderedBy = "ordered_by";

    public static SettingsSection Section { get; } = new("lots")
    {
        Object = "What is asked of lots.",
        Guide = "| `[lots]` | `same_within_db`: within how many dB two lots count as the same. `share`: of how many specimens of "
            + "a lot its tolerance limit holds. `ordered_by = \"washes\"`: a column of your own that gives specimens an order |",
        Heading = "## When lots are compared:\n# [lots]",
        Settings =
        [
            new(OrderedBy, """
        # ordered_by = "washes"     # a column of your own in sweeps.csv with one number for each specimen, such as
        #                           # washes, folds or months: how the
        #                           # shielding changes along it, and up to where the requirement is met
        """, PlanMember.Stated(OrderedBy, r => r.Plan.Lots.OrderedBy, """ "type": "string", "minLength": 1 """,
                "Column of sweeps.csv along which the shielding is followed")) { Turn = 1, Take = Column },
            Setting.Number("same_within_db", 0.01, 60, (plan, db) => plan with { Lots = plan.Lots with { MarginDb = db } },
                "# same_within_db = 1        # lots whose means differ by less count as the same",
                new PlanMember("same_within_db", r => r.Plan.Lots.MarginDb, PlanMember.Positive,
                    "Lots whose means differ by less count as the same.")),
            Setting.Number("share", 0.5, 0.999, (plan, share) => plan with { Lots = plan.Lots with { Share = share } },
                "# share = 0.95              # share of the specimens of a lot that its tolerance limit holds for",
                new PlanMember("share", r => r.Plan.Lots.Share, PlanMember.Share,
                    "Share of the specimens of a lot that a tolerance limit holds for.")),
        ],
    };

    private static CampaignSettings Column(KeyReader keys, CampaignSettings settings)
    {
        if (keys.Text(OrderedBy) is not { } name)
        {
            return settings;
        }

        var column = new PropertyColumn(name, keys.LineOf(OrderedBy), IsWeighed: true) { IsNeeded = true };
        if (NameRule.Problem(name) is { } problem)
        {
            keys.Refuse(OrderedBy, $"the name of the column in lots.{OrderedBy} {problem}", "shorten or correct it");
            return settings;
        }

        if (ManifestColumns.Known.Contains(column.Key))
        {
            keys.Refuse(OrderedBy, $"the column '{name}' of {CampaignFolder.ManifestName} has a meaning of its own and is no "
                + "number of each specimen", "name a column of your own, such as washes");
            return settings;
        }

        return settings with
        {
            OrderedBy = column,
            Plan = settings.Plan with { Lots = settings.Plan.Lots with { OrderedBy = column.Name } },
        };
    }
}
