namespace SweepStats.Files.Campaigns.Settings;

/// <summary>[choice]: what is asked of specimens among which one is to be chosen.</summary>
internal static class ChoiceSettings
{
    public static SettingsSection Section { get; } = new("choice")
    {
        Object = "What is asked of specimens among which one is to be chosen.",
        Guide = "| `[choice]` | a `yardstick` such as a solid sheet (`\"lot/specimen\"`); `lower_is_better`, `higher_is_better` "
            + "and `shown`: columns of your own, such as a price |",
        Heading = """
        ## When one specimen is to be chosen. The lists name columns of your own in sweeps.csv; their cells tell of the specimen.
        # [choice]
        """,
        Settings =
        [
            new("yardstick", """
        # yardstick = "autumn/A1"           # held against the others and no candidate; the specimen alone where only
        #                                   # one lot has it
        """, new PlanMember("yardstick", r => r.Plan.Choice.Yardstick?.ToString(),
                    """ "type": ["string", "null"], "minLength": 1 """,
                    "Specimen, as lot/specimen, that the others are held against and that is no candidate.")),
            new("lower_is_better", "# lower_is_better = [\"price_eur\"]   # numbers",
                new PlanMember("lower_is_better", r => PlanMember.List(r.Plan.Choice.LowerIsBetter), PlanMember.Names,
                    "Properties of which less is better.")),
            new("higher_is_better", "# higher_is_better = []             # numbers",
                new PlanMember("higher_is_better", r => PlanMember.List(r.Plan.Choice.HigherIsBetter), PlanMember.Names,
                    "Properties of which more is better.")),
            new("shown", "# shown = [\"supplier\"]              # shown and not weighed",
                new PlanMember("shown", r => PlanMember.List(r.Plan.Choice.Shown), PlanMember.Names,
                    "Properties that are shown and not weighed.")),
        ],
        Together = ChoiceSection.Read,
    };
}
