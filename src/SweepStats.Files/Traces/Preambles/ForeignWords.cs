namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// What detectors, modes and states are called in German, French, Spanish and Italian, and the English trade word for it. Words
/// of the trade that are alike everywhere, such as RMS and Max Hold, stay as they are written.
/// </summary>
internal static class ForeignWords
{
    private static readonly Dictionary<string, string> English = Table(
        new("peak", "spitze spitzenwert spitzenwertdetektor crete valeurcrete cretemax pico valordepico picco valoredipicco"),
        new("quasi-peak", "quasispitze quasispitzenwert quasicrete quasicrte cuasipico quasipicco"),
        new("average", "mittelwert mittelwertdetektor mittel moyenne valeurmoyenne promedio media "
            + "valormedio valoremedio mittelung"),
        new("rms", "effektivwert effektiv efficace valeurefficace valoreefficace eficaz valoreficaz rmswert"),
        new("sample", "abtastwert echantillon echantillonnage muestra muestreo campione campionamento"),
        new("negative peak", "negativespitze negativerspitzenwert minimalwert "
            + "crtenegative cretenegative piconegativo pecconegativo picconegativo"),
        new("max hold", "maximumhalten maxhalten maximalwerthalten maintienmax "
            + "maintiendumaximum maintienmaximum retencionmax retencionmaxima mantenimientomaximo "
            + "mantieniilmassimo mantenimentomassimo"),
        new("min hold", "minimumhalten minhalten minimalwerthalten maintienmin "
            + "maintienduminimum maintienminimum retencionmin retencionminima"),
        new("clear write", "loschenschreiben loeschenschreiben effacerecriture "
            + "effacerecrire effacementecriture borrarescribir cancellascrivi"),
        new("on", "ein an eingeschaltet aktiv aktiviert ja active marche oui encendido activado si acceso attivo attivato"),
        new("off", "aus ausgeschaltet inaktiv deaktiviert nein kein keine "
            + "desactive arret non aucun aucune apagado desactivado spento disattivo disattivato"));

    /// <summary>The English word, or the text as it is.</summary>
    public static string ToEnglish(string text) => English.GetValueOrDefault(PlainLetters.Of(text), text);

    private static Dictionary<string, string> Table(params Meaning[] rows) =>
        rows.SelectMany(row => row.Words.Split(' ').Select(word => (word, row.English)))
            .ToDictionary(pair => pair.word, pair => pair.English, StringComparer.Ordinal);

    /// <summary>A word, and those of other languages for it.</summary>
    private readonly record struct Meaning(string English, string Words);
}
