
namespace SweepStats.Files.Traces.Tables;

/// <summary>Words that name the columns of a trace in English, German, French, Spanish and Italian, in lower case.</summary>
internal static class ColumnWords
{
    /// <summary>Words that say frequency wherever they stand in a name.</summary>
    public static readonly HashSet<string> FrequencyInFull =
    [
        "frequency", "frequencies", "frequenz", "frequenzen", "fréquence", "fréquences", "frequence", "frequences",
        "frecuencia", "frecuencias", "frequenza", "frequenze",
    ];

    /// <summary>Words that say frequency at the head of a name.</summary>
    public static readonly HashSet<string> Frequency = [.. FrequencyInFull, "f", "freq", "freqs", "fréq", "frec", "stimulus"];

    /// <summary>Words that say level, or another size that is one once its unit is known.</summary>
    public static readonly HashSet<string> Level =
    [
        "level", "levels", "pegel", "amplitude", "amplitudes", "ampl", "amp", "magnitude", "mag", "power", "trace", "trc",
        "logmag", "linmag", "voltage", "signal", "value", "y", "run", "sweep", "repeat", "measurement", "meas",
        "reading", "field", "betrag", "spannung", "leistung", "feldstärke", "feldstaerke", "messwert", "wert", "messung", "kurve",
        "niveau", "niveaux", "puissance", "tension", "valeur", "mesure", "champ", "module", "courbe",
        "nivel", "niveles", "amplitud", "potencia", "tensión", "voltaje", "valor", "señal", "campo", "módulo", "modulo",
        "magnitud", "traza", "livello", "livelli", "ampiezza", "potenza", "tensione", "valore", "segnale", "misura", "traccia",
    ];

    /// <summary>Words of corrections: sizes that levels are to be corrected by.</summary>
    public static readonly HashSet<string> Correction =
    [
        "factor", "loss", "correction", "corr", "af", "shielding", "se", "transducer", "faktor", "korrektur", "antennenfaktor",
        "kabeldämpfung", "verlust", "facteur", "perte", "pertes", "blindage", "pérdida", "pérdidas", "corrección", "fattore",
        "perdita", "perdite", "correzione", "schirmdämpfung",
    ];

    /// <summary>Words of a gain, which may be a correction or a transmission that was measured.</summary>
    public static readonly HashSet<string> Gain = ["gain", "gewinn", "verstärkung", "ganancia", "guadagno"];

    /// <summary>Words of an attenuation, which rises where the level falls.</summary>
    public static readonly HashSet<string> Attenuation =
        ["attenuation", "dämpfung", "daempfung", "affaiblissement", "atténuation", "atenuación", "attenuazione"];

    /// <summary>Words of the size of a complex number.</summary>
    public static readonly HashSet<string> Magnitude =
        ["mag", "magnitude", "linmag", "lin", "linear", "abs", "betrag", "module", "módulo", "modulo", "magnitud", "linéaire",
            "lineal", "lineare"];

    /// <summary>Words that say that a magnitude is no logarithm.</summary>
    public static readonly HashSet<string> Linear = ["lin", "linear", "linmag", "linéaire", "lineal", "lineare"];

    /// <summary>Words of a real part.</summary>
    public static readonly HashSet<string> Real = ["real", "re", "realteil", "réel", "réelle", "reale"];

    /// <summary>Words of an imaginary part.</summary>
    public static readonly HashSet<string> Imaginary =
        ["imag", "im", "imaginary", "imaginärteil", "imaginaerteil", "imaginaire", "imaginaria", "immaginaria"];

    /// <summary>Words of a phase.</summary>
    public static readonly HashSet<string> Phase =
        ["phase", "ph", "angle", "ang", "winkel", "fase", "phasen", "phasenwinkel", "arg", "argument", "argumento"];

    /// <summary>Words of a degree.</summary>
    public static readonly HashSet<string> Degree =
        ["deg", "degree", "degrees", "grad", "degré", "degrés", "grados", "gradi", "°"];
}
