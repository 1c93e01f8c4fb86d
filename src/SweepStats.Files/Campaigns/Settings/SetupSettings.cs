namespace SweepStats.Files.Campaigns.Settings;

/// <summary>[setup]: the bench, and what its files do not say.</summary>
internal static class SetupSettings
{
    public static SettingsSection Section { get; } = new("setup")
    {
        Heading = "[setup]",
        Guide = "| `[setup]` | `frequency_unit`, `level_unit`, `impedance_ohm`, `rbw_hz`, `attenuation_db`, `source_dbm`, "
            + "`max_input_dbm`; `leakage = \"same\"` subtracts a leakage that the specimen does not change; "
            + "`shields_nothing = [\"lot/specimen\"]` names specimens that were in place and truly shield nothing |",
        Settings =
        [
            Setting.Number("rbw_hz", 1e-3, 1e12,
                (plan, hertz) => plan with { Setup = plan.Setup with { ResolutionBandwidthHz = hertz } },
                "# rbw_hz = 10e3             # resolution bandwidth, where the files do not state it",
                new PlanMember("rbw_hz", r => r.Plan.Setup.ResolutionBandwidthHz, PlanMember.Frequency)),
            Setting.Number("attenuation_db", 0, 200, (plan, db) => plan with { Setup = plan.Setup with { AttenuationDb = db } },
                "# attenuation_db = 10       # input attenuation",
                new PlanMember("attenuation_db", r => r.Plan.Setup.AttenuationDb)),
            Setting.Number("source_dbm", -200, 100, (plan, dbm) => plan with { SourceDbm = dbm }, """
        # source_dbm = 10           # level at the source for reference and covered; linearity sweeps are held against it
        """, new PlanMember("source_dbm", r => r.Plan.SourceDbm)),
            Setting.Number("max_input_dbm", -200, 100, (plan, dbm) => plan with { MaximumInputDbm = dbm },
                "# max_input_dbm = -10       # highest level that the receiver shows without error",
                new PlanMember("max_input_dbm", r => r.Plan.MaximumInputDbm)),
            Setting.Choice<bool>("leakage", [new("same", true), new("unknown", false)],
                (plan, same) => plan with { SameLeakage = same }, """
        # leakage = "same"          # or "unknown": whether the floor's leakage is the same with and without the specimen
        """, PlanMember.Stated("leakage", r => r.Plan.SameLeakage ? "same" : null, """ "enum": ["same"] """,
                    "Whether the leakage in the floor sweeps is the same with and without the specimen")) with { Turn = 1 },
            Setting.Of("impedance_ohm", keys => keys.Number("impedance_ohm", 0.1, 1e4), (s, ohm) => s with { ImpedanceOhm = ohm },
                "# impedance_ohm = 50        # for files in V, mV, µV, dBµV or dBmV"),
            Setting.Of("frequency_unit", SettingsUnits.OfFrequency, (s, unit) => s with { FrequencyUnit = unit },
                "# frequency_unit = \"MHz\"    # for files that do not say: Hz, kHz, MHz, GHz"),
            Setting.Of("level_unit", keys => SettingsUnits.OfLevel(keys, "setup"), (s, unit) => s with { LevelUnit = unit }, """
        # level_unit = "dBm"        # for files that do not say: dBm, dBµV, dBmV, dB, dBµV/m, V, mV, µV, W, mW
        """),
            new("shields_nothing", """
        # shields_nothing = ["autumn/A1"]   # specimens that were in place and truly shield nothing; else it is asked
        """, PlanMember.Stated("shields_nothing", r => r.Plan.ShieldNothing is { IsEmpty: false } named
                    ? PlanMember.List(named.Select(n => n.ToString())) : null, PlanMember.Names,
                "Specimens, as lot/specimen, that are stated to shield nothing"))
            {
                Turn = 1,
                Take = (keys, s) => s with
                {
                    ShieldNothing = [.. (keys.Texts("shields_nothing") ?? []).Select(t => new StatedSpecimen(t.Text, t.Line))],
                },
            },
        ],
    };
}
