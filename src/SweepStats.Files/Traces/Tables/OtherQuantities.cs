namespace SweepStats.Files.Traces.Tables;

/// <summary>Words and units of columns that stand beside levels and are none: what a logger notes besides.</summary>
internal static class OtherQuantities
{
    private static readonly HashSet<string> Names =
    [
        "batt", "battery", "batterie", "akku", "bateria", "batería", "batteria", "supply", "temp", "temperature", "temperatur",
        "température", "temperatura", "humidity", "feuchte", "luftfeuchte", "humidité", "humedad", "umidità", "pressure",
        "luftdruck", "pression", "presión", "pressione", "dwell", "verweilzeit", "height", "höhe", "hoehe", "hauteur", "altura",
        "altezza", "marker", "markers", "mkr", "marke", "counter", "zähler", "zaehler",
    ];

    private static readonly HashSet<string> Sources = ["source", "generator", "quelle", "quellen", "fuente", "sorgente", "gen"];

    private static readonly HashSet<string> Powers =
        ["power", "level", "leistung", "pegel", "puissance", "niveau", "potencia", "nivel", "potenza", "livello"];

    private static readonly HashSet<string> Units =
        ["ms", "us", "µs", "°c", "degc", "celsius", "°f", "%", "%rh", "hpa", "mbar", "kpa", "cm", "mm", "km"];

    // In brackets alone: "Trace m" and "Sweep s" may be names.
    private static readonly HashSet<string> ShortUnits = ["s", "sec", "m", "c", "k", "h"];

    /// <summary>
    /// Whether a name is that of the square of a magnitude, which has half the decibels, or of an error of one.
    /// </summary>
    public static bool IsNoMagnitude(string name) =>
        Array.Exists(Squares, s => name.Contains(s, StringComparison.OrdinalIgnoreCase))
        || (name.Contains('|', StringComparison.Ordinal)
            && (name.TrimEnd().EndsWith("|2", StringComparison.Ordinal)
                || Array.Exists(Differences, d => name.StartsWith(d, StringComparison.OrdinalIgnoreCase))));

    private static readonly string[] Squares = ["^2", "²", "**2", "squared", "quadrat", "carré", "cuadrado", "quadrato",
        "linear power", "lin. power", "lin power", "abs2"];

    private static readonly string[] Differences = ["d|", "Δ|", "δ|", "delta|", "delta |", "d |", "u(|", "u|"];

    /// <summary>Whether a name is that of another quantity, or in its unit.</summary>
    /// <param name="words">Words before the unit, in lower case.</param>
    /// <param name="unit">The unit, or the last word.</param>
    /// <param name="bracketed">Whether the unit stands in brackets.</param>
    public static bool Name(string[] words, string unit, bool bracketed) =>
        words.Any(Names.Contains) || (words.Any(Sources.Contains) && words.Any(Powers.Contains))
        || Units.Contains(unit.ToLowerInvariant()) || (bracketed && ShortUnits.Contains(unit.ToLowerInvariant()));
}
