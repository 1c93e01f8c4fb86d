namespace SweepStats.Files.Proposals;

/// <summary>Words of names, English and German, that tell what the number or name behind them counts.</summary>
internal static class PlaceWords
{
    private static readonly string[] Lots = ["lot", "charge", "los", "batch", "roll", "rolle", "bahn", "ballen", "coil"];
    private static readonly string[] Specimens =
        ["sample", "probe", "muster", "specimen", "coupon", "pruefling", "dut", "stueck", "piece", "panel", "teil"];
    private static readonly string[] Placements =
        ["placement", "pos", "position", "lage", "auflage", "platz", "mount", "einbau", "placed"];
    private static readonly string[] Repeats =
        ["rep", "repeat", "repetition", "wdh", "wiederholung", "run", "sweep", "messung", "mess", "meas", "measurement", "trace",
            "scan", "durchlauf", "take"];

    private static readonly string[] Sides =
        ["left", "right", "links", "rechts", "top", "bottom", "oben", "unten", "front", "back", "vorn", "vorne", "hinten",
            "center", "centre", "mitte"];

    private static readonly string[] Polarisations =
        ["h", "v", "hor", "ver", "vert", "horizontal", "vertical", "vertikal", "hpol", "vpol"];

    // They say that there are data, and of the rest nothing.
    private static readonly string[] Empty =
    [
        "data", "daten", "export", "exports", "traces", "raw", "roh", "day", "tag", "session", "serie", "series", "measurements",
        "messungen", "files", "results", "csv", "txt", "new", "neu", "final", "test", "copy", "kopie", "lab", "labor", "level",
        "pegel", "dbm", "db", "dbuv", "mhz", "ghz", "hz", "khz", "rbw", "vbw", "att", "avg", "s21", "nr", "the", "der", "die",
        "das", "und", "and", "of", "von", "aus", "all", "alle",
    ];

    /// <summary>What the token behind a word tells; null where the word says nothing of it.</summary>
    public static PlaceKind? Kind(string word) =>
        Lots.Contains(word) ? PlaceKind.Lot
        : Specimens.Contains(word) ? PlaceKind.Specimen
        : Placements.Contains(word) ? PlaceKind.Placement
        : Repeats.Contains(word) ? PlaceKind.Repeat
        : null;

    /// <summary>Whether the word itself is a placement, such as "left".</summary>
    public static bool IsSide(string word) => Sides.Contains(word);

    /// <summary>Whether the word may be a polarisation, which is neither a specimen nor a placement of one.</summary>
    public static bool IsPolarisation(string word) => Polarisations.Contains(word);

    /// <summary>Whether the word tells nothing of what was measured.</summary>
    public static bool IsEmpty(string word) => Empty.Contains(word);
}
