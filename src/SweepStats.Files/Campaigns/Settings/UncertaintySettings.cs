using System.Text.Json.Nodes;

namespace SweepStats.Files.Campaigns.Settings;

/// <summary>[[uncertainty]] and [budget]: errors that repeats do not show, and where the uncertainty comes from.</summary>
/// <remarks>The keys of an error bear on each other: <see cref="UncertaintySection"/>.</remarks>
internal static class UncertaintySettings
{
    public static SettingsSection Section { get; } = new("uncertainty")
    {
        IsRepeated = true,
        Guide = "| `[[uncertainty]]` | errors that repeats do not show: a half-width with its distribution |",
        Heading = "## Errors that repeats do not show; one block each.\n# [[uncertainty]]",
        Settings =
        [
            new("name", "# name = \"scale fidelity\""), new("half_width_db", "# half_width_db = 0.4"),
            new("distribution", """
        # distribution = "rectangular"   # normal (k = 2, dof), rectangular, triangular, trapezoidal (top_half_width_db)
        #                                # or arcsine
        """),
            new("k"), new("dof"), new("top_half_width_db"),
            new("reflection_source", """

        ## Mismatch may be given by the reflections of both sides in place of half_width_db and distribution:
        # [[uncertainty]]
        # name = "mismatch at the receiver"
        # distribution = "mismatch"      # arcsine; half-width 20 log10(1 - product of the magnitudes), the wider side
        # reflection_source = 0.2        # magnitude; or vswr_source = 1.5, or return_loss_source_db = 14
        """) { Turn = 1 },
            new("vswr_source"), new("return_loss_source_db"),
            new("reflection_load", """
        # reflection_load = 0.33         # magnitude; or vswr_load = 2, or return_loss_load_db = 9.5
        # acts_on = "both"
        """) { Turn = 1 },
            new("vswr_load"), new("return_loss_load_db"),
            new("acts_on", "# acts_on = \"covered\"            # reference, covered or both"),
            new("common", """
        # common = false                 # true: the same error in both, which cancels; false with acts_on = "both":
        #                                # each has its own, so it counts twice
        """),
        ],
        Together = UncertaintySection.Read,
    };

    public static SettingsSection Budget { get; } = new("budget")
    {
        Heading = """
        ## Where the uncertainty comes from is told for the weakest frequency of each specimen, or for these.
        # [budget]
        """,
        Settings =
        [
            new("frequencies_hz", "# frequencies_hz = [100e6, 433.9e6]",
                new PlanMember("budget_frequencies_hz",
                    r => new JsonArray([.. r.Plan.BudgetFrequencies.Select(f => (JsonNode)f.Value)]),
                    """ "type": "array", "items": { "type": "number", "minimum": 0 } """,
                    "Frequencies at which uncertainty budgets were asked for; none: where each specimen's claim is weakest.")),
        ],
        Together = BudgetSection.Read,
    };
}
