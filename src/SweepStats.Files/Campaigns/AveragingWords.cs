using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>Words that receivers use for ways of averaging and campaign.toml does not, and which of its own is meant.</summary>
internal static class AveragingWords
{
    /// <summary>The key averaging; null where it is missing or wrong.</summary>
    public static Averaging? Read(KeyReader keys)
    {
        // Receivers' menus have other words for it, and the nearest in spelling is not always the one that is meant.
        if (keys.Written("averaging") is { } word && Remedy(word) is { } remedy)
        {
            keys.Refuse("averaging", $"averaging is '{word}', not one of power, log, sample, peak and lowest", remedy);
            return null;
        }

        return keys.Choice<Averaging>(
            "averaging",
            new("power", Averaging.Power), new("log", Averaging.Log), new("sample", Averaging.Sample),
            new("peak", Averaging.Peak), new("lowest", Averaging.Lowest));
    }

    // What to write instead of a word; null where the word is none of these.
    private static string? Remedy(string word) => word.ToLowerInvariant() switch
    {
        "rms" or "rms detector" or "power average" or "pwr" => "write \"power\": an RMS detector averages power",
        "video" or "vbw" or "logarithmic" or "log-power" or "db" =>
            "write \"log\": averaging the logarithmic trace, by the video filter or over sweeps, is averaging in dB",
        "average" or "averaged" or "avg" or "mean" => "write what was averaged: \"power\" for power (RMS), \"log\" for the "
            + "trace in dB or the video filter, \"sample\" for one look without averaging",
        "linear" or "lin" or "voltage" =>
            "none of the words covers averaging of voltage: leave averaging out, and the intervals cover power and log, "
            + "between which voltage lies",
        "none" or "off" or "single" =>
            "write the detector: \"power\" for RMS, \"peak\" for peak, \"sample\" only for a sample detector",
        "max hold" or "maxhold" or "maximum hold" or "max" or "maximum" or "highest" or "peak hold"
            or "positive peak" or "pos peak" or "max peak" or "pk" or "pk+" or "+peak"
            or "quasi-peak" or "quasi peak" or "quasipeak" or "qp" => "write \"peak\": the highest of several looks is kept",
        "min hold" or "minhold" or "minimum hold" or "min" or "minimum"
            or "negative peak" or "neg peak" or "min peak" or "pk-" or "-peak" =>
            "write \"lowest\": the lowest of several looks is kept",
        _ => null,
    };
}
