namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// How settings are worded above the data, in English, German, French, Spanish and Italian: trade words only, without blanks,
/// digits, signs and accents (<see cref="PlainLetters"/>). What is worded otherwise counts as not stated.
/// </summary>
internal static class SettingKeys
{
    private const string OfTrace = "trace ";

    private static readonly (Setting Setting, string Words)[] Known =
    [
        (Setting.ResolutionBandwidth,
            "rbw resolutionbandwidth resbw resolutionbw resbandwidth rbwbandwidth bandwidthrbw ifbandwidth ifbw bwif "
            + "measurementbandwidth measbw measbandwidth resolutionfilter rbwfilterbandwidth bandwidthresolution rbwvalue "
            + "rbwactual "
            + "auflosebandbreite aufloesebandbreite auflosungsbandbreite aufloesungsbandbreite bandbreiteauflosung "
            + "bandbreiteaufloesung "
            + "zfbandbreite bandbreitezf bandwidthif ifbandbreite messbandbreite zwischenfrequenzbandbreite rbwbandbreite "
            + "largeurdebandederesolution bandederesolution bandepassantederesolution largeurdebandefi bandepassantefi bandefi "
            + "filtrederesolution largeurdebandedanalyse bandedanalyse bandepassanteanalyse bandederesolutionrbw "
            + "anchodebandaderesolucion bandaderesolucion anchodebandafi anchobandaresolucion "
            + "larghezzadibandadirisoluzione bandadirisoluzione bandarisoluzione larghezzabandarisoluzione "
            + "bandawidthrisoluzione"),
        (Setting.VideoBandwidth, "vbw videobandwidth videobw vidbw vidbandwidth bandwidthvideo videofilter vbwvalue "
            + "videobandbreite bandbreitevideo largeurdebandevideo bandevideo bandepassantevideo filtrevideo "
            + "anchodebandadevideo anchodebandavideo bandadevideo larghezzadibandavideo bandavideo"),
        (Setting.Attenuation,
            "attenuation rfattenuation inputattenuation rfatt att inputatt attn atten rfattn rfatten inputattn inputatten "
            + "attenuator rfattenuator inputattenuator attenuatorsetting attrf attenuationrf attenuationinput attenuationatt "
            + "dampfung daempfung hfdampfung hfdaempfung eingangsdampfung eingangsdaempfung eingangsabschwacher "
            + "eingangsabschwaecher "
            + "abschwacher abschwaecher abschwachung eichleitung rfdampfung rfdaempfung "
            + "attenuationdentree attenuationentree attenuateur attenuateurdentree attenuateurrf atenuacion atenuacionrf "
            + "atenuaciondeentrada atenuador "
            + "attenuazione attenuazionerf attenuazionediingresso attenuazionedingresso attenuazioneingresso attenuatore"),
        (Setting.ReferenceLevel,
            "referencelevel ref rlev reflevel reflvl levelreference reflev refpegel referenzpegel bezugspegel "
            + "niveaudereference niveauderef niveauref niveldereferencia nivelref livellodiriferimento"),
        (Setting.Detector,
            "detector detectors detectortype detectormode tracedetector detection detektor det dettype detmode detectorfunction "
            + "detectorname detektoren detektortyp detektorart messdetektor detecteur typededetecteur modedetecteur rivelatore "
            + "tipodedetector"),
        (Setting.Averaging, "averaging averagetype averagingtype averagemode averages avgtype avgmode averagingmode "
            + "averagingmethod averagemethod "
            + "averagingstate mittelung mittelungsart mittelungstyp mittelwertbildung moyennage typedemoyenne typedemoyennage "
            + "modedemoyennage "
            + "promediado promediacion mediazione"),
        (Setting.AverageCount, "averagecount avgcount avg average numberofaverages noofaverages numaverages averagefactor "
            + "averagingfactor averagingcount averagenumber "
            + "averagesnumber avgfactor avgnumber sweepaverages averagecounts countaverages averagescount naverages navg "
            + "nrofaverages "
            + "mittelungen anzahlmittelungen anzahldermittelungen mittelungszahl mittelungsfaktor mittelungsanzahl "
            + "nombredemoyennes nombredemoyennages moyennes moyennages nbmoyennes facteurdemoyennage numerodepromedios "
            + "promedios numerodimedie medie"),
        (Setting.SweepTime, "sweeptime swt sweep sweepduration swptime swtime timesweep sweeptimeactual sweepzeit ablaufzeit "
            + "wobbelzeit durchlaufzeit "
            + "sweepdauer tempsdebalayage dureedebalayage tempsbalayage balayage tiempodebarrido barrido tempodiscansione "
            + "tempodisweep tempodisweeping scansione"),
        (Setting.TraceMode, "tracemode tracetype tracefunction function tracemodus modedetrace modetrace modedelatrace "
            + "kurvenmodus kurvenart messkurvenmodus "
            + "spurmodus tracestate modusderkurve typedetrace mododetraza modotraza tipoditraccia modotraccia"),
        (Setting.Preamplifier, "preamp preamplifier preampstate preamplifierstate preampmode preampgain internalpreamp "
            + "intpreamp rfpreamp internalpreamplifier "
            + "preampenabled preampon vorverstarker vorverstaerker preamplificateur preampli preamplificador preamplificatore"),
        (Setting.SourcePower, "sourcepower inputpower outputpower portpower stimuluspower testportpower power rfpower "
            + "sourcelevel generatorlevel generatorpower "
            + "outputlevel quellpegel quellenleistung generatorpegel ausgangsleistung ausgangspegel puissancesource "
            + "puissancedelasource puissancedesource "
            + "niveaudelasource niveaudesource potenciadelafuente potenzadellasorgente"),
        (Setting.LevelUnit, "unit levelunit yunit dataunit amplitudeunit yaxisunit yaxisunits yunits"),
        (Setting.FrequencyUnit, "xunit frequencyunit xaxisunit xaxisunits xunits"),
        (Setting.Start, "start startfrequency startfreq xstart fstart"),
        (Setting.Stop, "stop stopfrequency stopfreq xstop fstop"),
        (Setting.Points, "points numberofpoints numpoints numberpoints sweeppoints tracepoints values noofpoints"),
        (Setting.TraceNames, "tracename tracenames"),
        (Setting.Date, "date datum datetime dateandtime timestamp measured measuredon measuredat acquired acquiredon recorded "
            + "recordedon taken takenon takenat "
            + "sweepdate measurementdate measdate dateofmeasurement testdate acquisitiondate measurementtime measurementdatetime "
            + "messdatum datumuhrzeit datumundzeit aufnahmedatum aufgenommen aufgenommenam gemessen gemessenam messzeitpunkt "
            + "zeitstempel "
            + "datedemesure mesurele dateetheure dateheure horodatage fecha fechayhora fechademedida medidoel data dataeora "
            + "datadimisura misuratoil"),
        (Setting.Bandwidth, "bandwidth bw bandbreite largeurdebande bandepassante anchodebanda larghezzadibanda filterbandwidth "
            + "filterbandbreite"),
        (Setting.Time, "time starttime sweepstarttime startzeit messbeginn timeofday uhrzeit zeit heure heuredemesure hora ora"),
        (Setting.Created, "created createdon createdat filecreated saved savedon savedat erstellt erstelltam gespeichert creele "
            + "creele enregistrele creado guardado creato"),
    ];

    // These are also what a detector, a trace or an average may be called, or words of other meanings: alone they begin nothing
    // within a line.
    private static readonly HashSet<string> Weak =
    [
        "ref", "average", "avg", "averaging", "averages", "sweep", "function", "detection", "time", "zeit", "data", "values",
        "points", "power", "start", "stop", "unit", "balayage", "barrido", "scansione", "measured", "taken", "recorded",
        "acquired", "created", "saved", "bandwidth", "bw", "bandbreite", "ora", "hora", "medie", "moyennes", "mittelung",
    ];

    private const int LongestKey = 80;

    private static readonly Dictionary<string, Setting>.AlternateLookup<ReadOnlySpan<char>> Lookup =
        Table().GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>The setting that a key names, and the unit that its last word may be, as in "sweep time ms".</summary>
    public static (Setting Setting, string Unit)? Find(string key)
    {
        if (Of(key) is { } named)
        {
            return (named, "");
        }

        // "Trace 2 RBW"
        if (key.StartsWith(OfTrace, StringComparison.Ordinal) && IsPlain(key[OfTrace.Length..]))
        {
            return Find(key[OfTrace.Length..]);
        }

        if ((UnitKeys.Find(key) ?? RangeKeys.Find(key)) is { } other)
        {
            return (other, "");
        }

        int last = key.LastIndexOf(' ');
        if (last <= 0 || !IsUnit(key[(last + 1)..]))
        {
            return null;
        }

        string before = key[..last];
        before = before.EndsWith(" in", StringComparison.Ordinal) ? before[..^3] : before;
        return Worded(before) is { } setting and not (Setting.LevelUnit or Setting.FrequencyUnit)
            ? (setting, key[(last + 1)..]) : null;
    }

    // Asked for every piece of every line: nothing is allocated here.
    private static Setting? Of(string key)
    {
        if (key.Length is 0 or > LongestKey)
        {
            return null;
        }

        Span<char> letters = stackalloc char[LongestKey];
        return Lookup.TryGetValue(letters[..PlainLetters.Write(key, letters)], out Setting setting) ? setting : null;
    }

    /// <summary>Whether the key is one of the list, word for word.</summary>
    public static bool IsNamed(string key) => Of(key) is not null;

    /// <summary>Whether the key can hardly be anything but a setting, wherever it stands in a line.</summary>
    public static bool IsPlain(string key) => Find(key) is not null && !Weak.Contains(PlainLetters.Of(key));

    private static Setting? Worded(string key) => Of(key) ?? RangeKeys.Find(key);

    private static bool IsUnit(string word) =>
        word is "s" or "sec" or "ms" or "us" or "µs" || FrequencyUnits.Parse(word) is not null
            || LevelUnits.Parse(word) is not null;

    private static Dictionary<string, Setting> Table()
    {
        Dictionary<string, Setting> table = new(StringComparer.Ordinal);
        foreach ((Setting setting, string words) in Known)
        {
            foreach (string word in words.Split(' '))
            {
                table[word] = setting;
            }
        }

        return table;
    }
}
