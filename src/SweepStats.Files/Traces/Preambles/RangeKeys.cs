namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// How the range of a sweep, its spacing and what its trace shows are worded, in lower case, digits and signs left out.
/// </summary>
internal static class RangeKeys
{
    private static readonly Dictionary<string, Setting> Words = new (Setting Setting, string[] Words)[]
    {
        (Setting.Start,
        [
            "frequency start", "freq start", "startfrequenz", "anfangsfrequenz", "start frequenz", "frequenz start", "xmin",
            "x min", "fmin", "f min", "fréquence de début", "fréquence de départ", "fréquence initiale", "fréquence début",
            "début", "fréq début", "frequence de debut", "frecuencia inicial", "frecuencia de inicio", "frecuencia inicio",
            "inicio", "frequenza iniziale", "frequenza di inizio", "frequenza di start", "startfreq", "freqstart",
            "startfrequency", "start f", "begin frequency", "from", "lower frequency", "initial frequency", "initial freq",
            "first freq", "f first", "erste frequenz", "première fréquence", "primera frecuencia", "prima frequenza",
            "first frequency", "minimum frequency",
        ]),
        (Setting.Stop,
        [
            "frequency stop", "freq stop", "stoppfrequenz", "stopfrequenz", "endfrequenz", "stop frequenz", "frequenz stop",
            "xmax", "x max", "fmax", "f max", "fréquence de fin", "fréquence d arrêt", "fréquence finale", "fréquence fin", "fin",
            "fréq fin", "frequence de fin", "frecuencia final", "frecuencia de fin", "frecuencia de parada", "frecuencia fin",
            "frequenza finale", "frequenza di fine", "frequenza di stop", "stopfreq", "freqstop", "stopfrequency", "stop f",
            "end frequency", "end freq", "fend", "f end", "to", "upper frequency", "last frequency", "maximum frequency",
        ]),
        (Setting.Centre,
        [
            "center", "centre", "center frequency", "centre frequency", "center freq", "centre freq", "frequency center", "cf",
            "fc", "f center", "xcenter", "mittenfrequenz", "mitte", "fréquence centrale", "centre de fréquence",
            "frecuencia central", "centro", "frequenza centrale", "fcenter", "centerfreq",
        ]),
        (Setting.Span,
        [
            "span", "frequency span", "freq span", "spanne", "darstellbreite", "spannweite", "frequenzspanne", "xspan", "x span",
            "fspan", "f span", "excursion", "plage", "étendue", "excursion de fréquence", "fréquence span", "barrido",
            "ancho de barrido", "escursione", "sweep span", "sweep width", "sweep range", "wobbelhub",
        ]),
        (Setting.Range,
        [
            "frequency range", "freq range", "range", "sweep", "scan", "frequency", "frequencies", "freq", "frequenz",
            "fréquence", "frecuencia", "frequenza", "f", "start stop", "frequenzbereich", "bereich", "gamme de fréquences",
            "gamme", "plage de fréquences", "rango de frecuencias", "rango", "intervallo di frequenza", "campo di frequenza",
            "x range", "sweep from", "start stop frequency",
        ]),
        (Setting.Step,
        [
            "step", "step size", "frequency step", "freq step", "stepsize", "increment", "frequency increment", "xstep", "x step",
            "delta f", "df", "x increment", "schrittweite", "schritt", "frequenzschritt", "pas", "pas de fréquence", "paso",
            "paso de frecuencia", "passo", "passo di frequenza", "step frequency", "step width", "xincrement", "xdelta", "δf",
            "δ f", "deltaf", "delta frequency", "delta freq", "freq increment", "freq delta", "frequency delta", "f step",
            "fstep", "step f", "dx", "delta x", "x delta", "bin width", "frequency bin width", "point distance",
            "frequenzabstand", "frequenzinkrement", "inkrement", "incremento", "incrément",
        ]),
        (Setting.Points,
        [
            "anzahl punkte", "punkte", "messpunkte", "anzahl messpunkte", "anzahl der messpunkte", "anzahl der punkte",
            "punktzahl", "punktanzahl", "nombre de points", "nb points", "nb de points", "nbre de points", "número de puntos",
            "numero de puntos", "puntos", "num puntos", "numero di punti", "numero punti", "punti", "number of values",
            "numberofvalues", "number of frequencies", "number of levels", "number of rows", "number of bins",
            "number of trace points", "no points", "n points", "npoints", "numpoints", "point count", "pts", "trace length",
            "number of sweep points", "nop", "sweep length", "data points", "number of data points", "measurement points",
            "values per trace", "number of measurement points", "points per sweep", "points sweep", "anzahl werte",
            "anzahl der werte",
        ]),
        (Setting.Spacing,
        [
            "sweep type", "spacing", "frequency spacing", "point spacing", "points spacing", "step type", "frequency scale",
            "frequency axis", "x scale", "x axis scale", "x axis type", "x axis scaling", "x scaling", "x spacing", "sweep scale",
            "sweep mode", "sweep spacing", "step mode", "scale type", "frequency sweep", "freq axis", "freq scale",
            "frequenzachse", "teilung", "frequenzteilung", "sweep art", "sweepart", "x achse skalierung", "type de balayage",
            "échelle", "tipo de barrido", "escala", "tipo di sweep", "scala", "axis scale", "frequency step type",
            "frequency distribution", "point distribution",
        ]),
        (Setting.Format,
        [
            "format", "trace format", "measurement format", "display format", "data format", "meas format", "trace data format",
            "y format", "format trace", "darstellung", "anzeigeformat", "messformat", "y axis format", "displayed quantity",
            "formato", "format de trace", "formato de traza", "formato traccia", "trace display",
        ]),
    }.SelectMany(k => k.Words.Select(w => (w, k.Setting))).DistinctBy(p => Glued(p.w))
        .ToDictionary(p => Glued(p.w), p => p.Setting, StringComparer.Ordinal);

    /// <summary>The setting that a key names; null for none of these.</summary>
    /// <param name="key">Lower-case words.</param>
    public static Setting? Find(string key) => Words.TryGetValue(Glued(key), out Setting setting) ? setting : null;

    // "FirstFrequency" is "first frequency".
    private static string Glued(string key) => key.Replace(" ", "", StringComparison.Ordinal);

    /// <summary>Whether a setting is a number, so that words behind its key state something else.</summary>
    public static bool IsNumeric(Setting setting) =>
        setting is Setting.Start or Setting.Stop or Setting.Centre or Setting.Span or Setting.Step or Setting.Points;
}
