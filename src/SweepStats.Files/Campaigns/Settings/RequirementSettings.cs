using SweepStats.Quantities;

namespace SweepStats.Files.Campaigns.Settings;

/// <summary>[requirement]: what is asked, and how sure a statement about it has to be.</summary>
internal static class RequirementSettings
{
    public static SettingsSection Section { get; } = new("requirement")
    {
        Guide = "| `[requirement]` | what is asked, over frequency; `confidence`, `guard_band_db` |",
        Heading = """
        ## What the curtain has to do: one value, or points joined over log frequency, or a file with the columns
        ## frequency_hz and se_db.
        # [requirement]
        """,
        Settings =
        [
            Setting.Number("margin_db", 0, 100, (plan, db) => plan with { Margin = new Decibels(db) },
                "# margin_db = 6             # dynamic range wanted beyond that",
                new PlanMember("margin_db", r => r.Plan.Margin.Value, """ "type": "number" """)) with { Turn = 1 },
            Setting.Number("confidence", 0.5, 0.9999, (plan, level) => plan with { RequirementConfidence = new(level) }, """
        # confidence = 0.95         # one-sided level of "meets" and of "fails"; left out: the level of all intervals;
        #                           # 0.5: the measured value alone decides
        """, new PlanMember("requirement_confidence", r => r.Plan.Rule?.Level.Level,
                    """ "type": ["number", "null"], "minimum": 0.5, "exclusiveMaximum": 1 """,
                    "One-sided level of meets and fails; null without requirement.")) with { Turn = 1 },
            Setting.Number("guard_band_db", 0, 100, (plan, db) => plan with { GuardBand = new Decibels(db) },
                "# guard_band_db = 0         # to meet, the lower limit has to lie this much above the requirement",
                new PlanMember("guard_band_db", r => r.Plan.Rule?.GuardBand.Value,
                    """ "type": ["number", "null"], "minimum": 0 """,
                    "How far the lower limit has to lie above the requirement to meet it; null without requirement."))
                with { Turn = 1 },
            new("se_db", "# se_db = 20",
                new PlanMember("required_least_db", r => Asked(r).Min(), PlanMember.Number,
                    "Least shielding asked for at an analysed frequency."),
                new PlanMember("required_most_db", r => Asked(r).Max(), PlanMember.Number,
                    "Most shielding asked for at an analysed frequency.")),
            new("points", "## points = [[30e6, 20], [1e9, 40]]   # in place of se_db"),
            new("file", "## file = \"limits.csv\"                 # in place of se_db"),
        ],
        Together = RequirementSection.Read,
    };

    // Within the analysed frequencies; a constant asks for the same at all of them.
    private static IEnumerable<double?> Asked(AnalysisResult result) => result.Plan.Requirement is not { } asked ? []
        : result.Campaign.Grid.Hertz.ToArray().Select(hertz => asked.At(new Hertz(hertz))?.Value);
}
