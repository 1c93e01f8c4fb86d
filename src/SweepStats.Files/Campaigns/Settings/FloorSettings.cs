using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns.Settings;

/// <summary>[floor] and [reference]: when they were taken, beside the covered sweeps.</summary>
internal static class FloorSettings
{
    public static SettingsSection Section { get; } = new("floor")
    {
        Guide = "| `[floor]`, `[reference]` | when they were taken: `taken = \"before-and-after\"` or `\"once\"`; of the floor "
            + "also `stability_db` or `declared_dbm` |",
        Heading = """
        ## Take floor and reference sweeps before AND after the specimens, and note their times (taken_at in sweeps.csv).
        # [floor]
        """,
        Settings =
        [
            Setting.Number("declared_dbm", -300, 100, (plan, dbm) => plan with { DeclaredFloorDb = dbm },
                "# declared_dbm = -104          # only where no floor sweeps were taken",
                new PlanMember("declared_floor_db", r => r.Plan.DeclaredFloorDb)) with { Turn = 1 },
            Taken("floor", plan => plan.FloorTaking, (plan, taking) => plan with { FloorTaking = taking }),
            Setting.Number("stability_db", 0, 20, (plan, db) => plan with { FloorStabilityDb = db },
                "# stability_db = 0.5           # how far the floor moves at most after it was measured once",
                PlanMember.Stated("floor_stability_db", r => r.Plan.FloorStabilityDb, """ "type": "number", "minimum": 0 """,
                    "How far the floor is taken to have moved after it was measured")),
        ],
        Together = (keys, settings) =>
        {
            if (!keys.Has("taken") && !keys.Has("stability_db") && !keys.Has("declared_dbm"))
            {
                keys.Refuse(keys.Line, "section [floor] says nothing", "add taken or stability_db, or remove it");
            }

            return settings;
        },
    };

    public static SettingsSection Reference { get; } = new("reference")
    {
        Heading = "# [reference]",
        Settings =
            [Taken("reference", plan => plan.ReferenceTaking, (plan, taking) => plan with { ReferenceTaking = taking })],
        Together = (keys, settings) =>
        {
            keys.Require("taken");
            return settings;
        },
    };

    private static Setting Taken(
        string what, Func<AnalysisPlan, SweepTaking> of, Func<AnalysisPlan, SweepTaking, AnalysisPlan> put)
    {
        KeyWord<SweepTaking>[] words = [new("once", SweepTaking.Once), new("before-and-after", SweepTaking.BeforeAndAfter)];
        return Setting.Choice("taken", words, put, "# taken = \"before-and-after\"   # or \"once\"; left out: the times tell",
            PlanMember.Stated($"{what}_taken", r => words.FirstOrDefault(w => w.Value == of(r.Plan)).Word,
                """ "enum": ["once", "before-and-after"] """, $"When the {what} sweeps were taken, beside the covered ones"));
    }
}
