using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;
using SweepStats.Sweeps;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>What the lines above the data plainly state: receiver settings and units. What is worded otherwise counts as not stated.</summary>
internal sealed partial class Preamble
{
    private const int LongestLine = 400;

    private static readonly Dictionary<string, string> Keys = new(StringComparer.Ordinal)
    {
        ["rbw"] = "rbw",
        ["resolution bandwidth"] = "rbw",
        ["res bw"] = "rbw",
        ["resolution bw"] = "rbw",
        ["if bandwidth"] = "rbw",
        ["ifbw"] = "rbw",
        ["if bw"] = "rbw",
        ["vbw"] = "vbw",
        ["video bandwidth"] = "vbw",
        ["video bw"] = "vbw",
        ["attenuation"] = "att",
        ["rf attenuation"] = "att",
        ["input attenuation"] = "att",
        ["rf att"] = "att",
        ["att"] = "att",
        ["reference level"] = "ref",
        ["ref level"] = "ref",
        ["ref lvl"] = "ref",
        ["detector"] = "det",
        ["detector type"] = "det",
        ["detector mode"] = "det",
        ["averaging"] = "avg",
        ["average type"] = "avg",
        ["averaging type"] = "avg",
        ["average mode"] = "avg",
        ["averages"] = "avg",
        ["sweep time"] = "swt",
        ["swt"] = "swt",
        ["sweeptime"] = "swt",
        ["unit"] = "level",
        ["level unit"] = "level",
        ["y unit"] = "level",
        ["data unit"] = "level",
        ["amplitude unit"] = "level",
        ["y axis unit"] = "level",
        ["y axis units"] = "level",
        ["y units"] = "level",
        ["x unit"] = "frequency",
        ["frequency unit"] = "frequency",
        ["x axis unit"] = "frequency",
        ["x axis units"] = "frequency",
        ["x units"] = "frequency",
    };

    private readonly Dictionary<string, string> _found = new(StringComparer.Ordinal);

    /// <summary>Unit of level that a line states.</summary>
    public LevelUnit? LevelUnit => _found.TryGetValue("level", out string? unit) ? LevelUnits.Parse(unit) : null;

    /// <summary>Unit of frequency that a line states.</summary>
    public FrequencyUnit? FrequencyUnit => _found.TryGetValue("frequency", out string? unit) ? FrequencyUnits.Parse(unit) : null;

    /// <summary>The settings.</summary>
    public ReceiverSettings Settings => new()
    {
        ResolutionBandwidthHz = Sized("rbw", HertzOf),
        VideoBandwidthHz = Sized("vbw", HertzOf),
        AttenuationDb = Sized("att", unit => unit is "db" or "" ? 1 : null),
        ReferenceLevel = Sized("ref", unit => unit.Length == 0 || LevelUnits.Parse(unit) is not null ? 1 : null),
        Detector = Worded("det"),
        Averaging = Worded("avg"),
        SweepTimeSeconds = Sized("swt", unit => unit switch { "s" or "sec" => 1, "ms" => 1e-3, "us" or "µs" => 1e-6, _ => null }),
    };

    /// <summary>Reads the lines above the data.</summary>
    public static Preamble Read(TraceText text, DataBlock block) => Read(text, block.FirstLine);

    /// <summary>Reads the first lines of a text.</summary>
    public static Preamble Read(TraceText text, int lines)
    {
        var preamble = new Preamble();
        for (int i = 0; i < lines; i++)
        {
            if (text.Line(i).Length <= LongestLine)
            {
                preamble.Take(text.LineText(i));
            }
        }

        return preamble;
    }

    private void Take(string line)
    {
        Match pair = Pair().Match(line.Replace("\"", "", StringComparison.Ordinal));
        if (!pair.Success)
        {
            return;
        }

        string words = NotWord().Replace(pair.Groups["key"].Value.ToLowerInvariant(), " ").Trim();
        string unitInKey = pair.Groups["unit"].Value.Trim();
        if (!Keys.TryGetValue(words, out string? key))
        {
            int last = words.LastIndexOf(' ');
            if (last < 0 || !Keys.TryGetValue(words[..last], out key) || key is "level" or "frequency")
            {
                return;
            }

            unitInKey = words[(last + 1)..];
        }

        string value = Parting().Replace(pair.Groups["value"].Value, " ").Trim();
        // The first statement counts; a later one that differs makes the setting unknown rather than the last one true.
        string stated = unitInKey.Length > 0 ? $"{value} {unitInKey}" : value;
        _found[key] = _found.TryGetValue(key, out string? before) && before != stated ? "" : stated;
    }

    private double? Sized(string key, Func<string, double?> size)
    {
        if (!_found.TryGetValue(key, out string? stated) || NumberAndUnit().Match(stated) is not { Success: true } match)
        {
            return null;
        }

        byte[] digits = Encoding.ASCII.GetBytes(match.Groups[1].Value);
        return StrictNumber.TryParse(digits, (byte)'.', 0, out double number) && size(match.Groups[2].Value.ToLower(CultureInfo.InvariantCulture)) is { } factor
            ? number * factor
            : null;
    }

    private string? Worded(string key) =>
        _found.TryGetValue(key, out string? stated) && stated.Length is > 0 and <= 60 ? new string([.. stated.Where(c => !char.IsControl(c))]) : null;

    private static double? HertzOf(string unit) => FrequencyUnits.Parse(unit) is { } known ? Math.Pow(10, known.Exponent()) : null;

    [GeneratedRegex(@"^[\s!#%]*(?<key>\p{L}[\p{L}\s_.\-/]*?)\s*(?:[\(\[](?<unit>[^\)\]]*)[\)\]])?\s*(?:[:=,;\t][:=,;\s]*|\s(?=[-+\d]))\s*(?<value>[^\s,;].*)$", RegexOptions.CultureInvariant, 100)]
    private static partial Regex Pair();

    [GeneratedRegex(@"[^\p{L}]+")]
    private static partial Regex NotWord();

    [GeneratedRegex(@"[,;\t\s]+")]
    private static partial Regex Parting();

    [GeneratedRegex(@"^([-+]?[\d.]+(?:[eE][-+]?\d+)?)\s*(\S*)$")]
    private static partial Regex NumberAndUnit();
}
