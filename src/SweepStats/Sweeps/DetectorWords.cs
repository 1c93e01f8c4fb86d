using System.Collections.Frozen;
using System.Text;

namespace SweepStats.Sweeps;

/// <summary>What is meant by the words with which receivers name detector, averaging and trace mode.</summary>
/// <remarks>
/// Trade words and their usual abbreviations, whatever their case, spaces and signs; numbers count for nothing. A word that is
/// not in the table, or has more than one meaning, gives <see cref="Averaging.Unknown"/>: nothing is guessed. A kept look goes
/// before any averaging of what is kept, and a hold of the trace before the detector: noise is no average any more. Where the
/// highest and the lowest are kept one after the other, the lowest counts: its limits hold for both. Common practice, no source;
/// CISPR 16-1-1 for the quasi-peak detector (from memory).
/// </remarks>
public static class DetectorWords
{
    private enum Meaning
    {
        /// <summary>No word, or one that says nothing of it.</summary>
        Nothing,

        /// <summary>It may be one thing or another.</summary>
        Ambiguous,

        /// <summary>An average, and not of what.</summary>
        SomeAverage,

        Power,
        Log,
        Sample,
        Highest,
        Lowest,
    }

    // Words beside the one that counts.
    private static readonly string[] Fillers =
        ["detector", "detection", "det", "mode", "trace", "type", "sweeps", "values", "reading", "readings"];

    // Signs, spaces and fillers are taken out of a wording before it is looked up; "+" reads pos, and a "-" that is no hyphen
    // reads neg.
    private static readonly FrozenDictionary<string, Meaning> Anywhere = Table(
        new(Meaning.Highest, "peak pk pospeak peakpos positivepeak peakpositive pospk pkpos positivepk pkpositive maxpeak "
            + "peakmax maximumpeak maxpk pkmax"),
        new(Meaning.Highest, "quasipeak qpeak qpk quasipk qp qpe qpd autopeak autopk apeak apk rosenfell rosenfelt"),
        new(Meaning.Highest, "cisprpeak cisprpk cisprqp cisprquasipeak emipeak emipk emiqp emiquasipeak"),
        new(Meaning.Highest, "maxhold maxhld maxh mxhold mxh holdmax maximumhold holdmaximum peakhold pkhold holdpeak "
            + "maxpeakhold peakmaxhold"),
        new(Meaning.Lowest, "negpeak peakneg negativepeak peaknegative negpk pkneg negativepk pknegative minpeak peakmin "
            + "minimumpeak minpk pkmin"),
        new(Meaning.Lowest, "minhold minhld minh mnhold mnh holdmin minimumhold holdminimum minpeakhold peakminhold"),
        new(Meaning.Power, "rms truerms rmspower powerrms rmsaverage averagerms rmsavg avgrms rmsmean rootmeansquare meansquare"),
        new(Meaning.Power, "power pwr averagepower poweraverage avgpower poweravg avgpwr pwravg averagepwr pwraverage powermean "
            + "meanpower poweraveraging"),
        new(Meaning.Log, "logpower logpwr logpoweraverage logpoweravg logpwravg logpwraverage averagelogpower avglogpower "
            + "averagelogpwr avglogpwr"),
        new(Meaning.Log, "log logarithmic logaverage averagelog logavg avglog logmean logaveraging logarithmicaverage "
            + "averagelogarithmic db dbaverage averagedb"),
        new(Meaning.Log, "video videoaverage averagevideo videoavg avgvideo videoaveraging logvideo videolog logpowervideo "
            + "logpwrvideo"),
        new(Meaning.Sample, "sample samp smp smpl sampled sampling"),
        new(Meaning.SomeAverage, "average averaged averaging avg aver av ave mean cispravg cispraverage cisprav emiavg "
            + "emiaverage traceaverage averagetrace"),
        new(Meaning.Nothing, "off none no on yes single continuous"));

    private static readonly FrozenDictionary<string, Meaning> OfDetector = Table(
        new(Meaning.Highest, "pos positive max maximum normal norm nrm nor"),
        new(Meaning.Lowest, "neg negative min minimum"),
        new(Meaning.Nothing, "auto automatic"));

    private static readonly FrozenDictionary<string, Meaning> OfTrace = Table(
        new(Meaning.Highest, "max maximum"),
        new(Meaning.Lowest, "min minimum"),
        new(Meaning.Nothing, "clearwrite clrwrite clrwrt clrwr clwr clrw cw clear clr write writ wrt view blank live normal "
            + "active actual update refresh standard"));

    /// <summary>
    /// How a receiver with these settings averages, or which look it keeps; unknown where its words do not say for certain.
    /// </summary>
    public static Averaging Of(ReceiverSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        Meaning[] all =
        [
            Find(settings.TraceMode, OfTrace), Find(settings.Detector, OfDetector), Find(settings.Averaging, OfTrace),
            Counted(settings.Averaging),
        ];
        return all.Contains(Meaning.Lowest) ? Averaging.Lowest
            : all.Contains(Meaning.Highest) ? Averaging.Peak
            : all.Contains(Meaning.Ambiguous) ? Averaging.Unknown
            : Averaged(all);
    }

    private static Averaging Averaged(Meaning[] all)
    {
        bool Says(Meaning meaning) => all.Contains(meaning);
        return (Says(Meaning.Power), Says(Meaning.Log), Says(Meaning.Sample), Says(Meaning.SomeAverage)) switch
        {
            // An RMS detector whose readings are averaged in dB is neither the one nor the other.
            (true, true, _, _) => Averaging.Unknown,
            (true, false, _, _) => Averaging.Power,
            (false, true, _, _) => Averaging.Log,
            (false, false, true, false) => Averaging.Sample,
            _ => Averaging.Unknown,
        };
    }

    // "Averages: 100" says that there is an average, and not of what.
    private static Meaning Counted(string? averaging)
    {
        string digits = string.Concat((averaging ?? string.Empty).Where(char.IsAsciiDigit));
        return digits.Length == 0 || digits is "0" or "1" || Bare(averaging!).Length > 0 ? Meaning.Nothing : Meaning.SomeAverage;
    }

    private static Meaning Find(string? wording, FrozenDictionary<string, Meaning> own)
    {
        string word = Bare(wording ?? string.Empty);
        return word.Length == 0 ? Meaning.Nothing
            : own.TryGetValue(word, out Meaning meaning) ? meaning : Anywhere.GetValueOrDefault(word, Meaning.Ambiguous);
    }

    // Letters only, one word after the other.
    private static string Bare(string wording)
    {
        var spaced = new StringBuilder();
        for (int i = 0; i < wording.Length; i++)
        {
            bool between = i > 0 && i + 1 < wording.Length
                && char.IsLetterOrDigit(wording[i - 1]) && char.IsLetterOrDigit(wording[i + 1]);
            spaced.Append(wording[i] switch
            {
                '+' => " pos ",
                '-' or '\u2212' when !between => " neg ",
                var letter when char.IsAsciiLetter(letter) => char.ToLowerInvariant(letter),
                _ => ' ',
            });
        }

        string[] words = spaced.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return string.Concat(words.Except(Fillers, StringComparer.Ordinal));
    }

    private static FrozenDictionary<string, Meaning> Table(params Wording[] rows) =>
        rows.SelectMany(row => row.Words.Split(' ').Select(word => KeyValuePair.Create(word, row.Meaning)))
            .ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>What some words mean; they are parted by spaces.</summary>
    private readonly record struct Wording(Meaning Meaning, string Words);
}
