using System.Globalization;
using System.Text.RegularExpressions;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// Finds out when a sweep was taken, from lines that say "date" or "time" and from the first lines of a file. Day and month are
/// told apart by a number above 12 or by the month's name; where neither helps the date is not used.
/// </summary>
internal sealed partial class SweepDate
{
    // Titles with a date stand at the top; further down dates are those of calibrations and markers.
    private const int TitleLines = 3;

    private readonly List<string> _stated = [];
    private readonly List<string> _times = [];
    private readonly List<string> _created = [];
    private readonly List<string> _titles = [];

    /// <summary>The time, without a zone where none is stated, and what a person should know about it.</summary>
    public StatedTime Found
    {
        get
        {
            string time = _times.Count == 1 ? " " + _times[0] : "";
            string[] stated =
                [.. _stated.Select(s => s + (Clock().IsMatch(s) ? "" : time)).Concat(_stated.Count == 0 ? _times : [])];
            if (Only([.. stated.Select(s => Compact(s) ?? Parse(s))]) is { } found)
            {
                return found;
            }

            if (Only([.. _created.Select(Parse)]) is { } written)
            {
                return new(
                    written.At, written.Assumption ?? "the time of the sweep is when the file was written, as the file says");
            }

            return _titles.Select(Parse).FirstOrDefault(t => t is not null) ?? default;
        }
    }

    /// <summary>Takes what a line with the word date or time states.</summary>
    public void Stated(Setting setting, string text) =>
        (setting switch
        {
            Setting.Time when !Clock().IsMatch(text) => [],
            Setting.Date => _stated,
            Setting.Time => _times,
            _ => _created
        }).Add(text);

    /// <summary>Looks at a line of the file.</summary>
    public void Line(string text, int index)
    {
        if (index < TitleLines && !OtherDates().IsMatch(text))
        {
            _titles.Add(text);
        }
    }

    /// <summary>The date and time in a text; null where there is none.</summary>
    public static StatedTime? Parse(string text)
    {
        if (text.AsSpan().IndexOfAnyInRange('0', '9') < 0)
        {
            return null;
        }

        if (Iso().Match(text) is { Success: true } iso)
        {
            return At(iso, iso.Groups["y"].Value, iso.Groups["m"].Value, iso.Groups["d"].Value);
        }

        if (Named().Match(text) is { Success: true } named)
        {
            string month = MonthName.Number(named.Groups["m"].Value).ToString(CultureInfo.InvariantCulture);
            return At(named, named.Groups["y"].Value, month, named.Groups["d"].Value);
        }

        return Numbers().Match(text) is { Success: true } numbers ? OfNumbers(numbers) : null;
    }

    private static StatedTime? OfNumbers(Match numbers)
    {
        (string a, string b) = (numbers.Groups["a"].Value, numbers.Groups["b"].Value);
        int first = int.Parse(a, CultureInfo.InvariantCulture), second = int.Parse(b, CultureInfo.InvariantCulture);
        bool points = numbers.Groups["s"].Value == ".";
        if (first <= 12 && second <= 12 && first != second && !points)
        {
            return new(null, $"the date {numbers.Value.Trim()} was not used: day and month cannot be told apart");
        }

        // With points between them the day comes first, as DIN 5008 has it.
        string year = numbers.Groups["y"].Value;
        return second > 12 ? At(numbers, year, a, b) : At(numbers, year, b, a);
    }

    // The one that is stated, a day alone giving way to the same day with a time; of two that differ neither.
    private static StatedTime? Only(StatedTime?[] found)
    {
        StatedTime[] all = [.. found.OfType<StatedTime>().Distinct()];
        var timed = all.Where(d => d.At is not { TimeOfDay.Ticks: 0 } day || !all.Any(o => o.At?.Date == day.Date && o.At != day))
            .ToArray();
        return timed switch
        {
            [] => null,
            [var one] => one,
            _ => timed.FirstOrDefault(d => d.At is null) is { Assumption: { } unclear } ? new(null, unclear)
                : new(null, string.Create(
                    CultureInfo.InvariantCulture, $"the file states two times, {timed[0].At:yyyy-MM-dd HH:mm:ss} and "
                        + $"{timed[1].At:yyyy-MM-dd HH:mm:ss}; neither was used")),
        };
    }

    // "20260217T094100", where a line calls it a date.
    private static StatedTime? Compact(string text) =>
        Digits().Match(text) is { Success: true } match
            ? At(match, match.Groups["y"].Value, match.Groups["m"].Value, match.Groups["d"].Value) : null;

    private static StatedTime? At(Match match, string year, string month, string day)
    {
        int fullYear = Number(year) + (year.Length == 2 ? 2000 : 0);
        bool real = fullYear is >= 1970 and < 2200 && Number(month) is >= 1 and <= 12
            && Number(day) >= 1 && Number(day) <= DateTime.DaysInMonth(fullYear, Number(month));
        return real ? At(match, new DateOnly(fullYear, Number(month), Number(day))) : null;
    }

    private static StatedTime? At(Match match, DateOnly day)
    {
        int hour = Number(match.Groups["h"].Value);
        string half = match.Groups["half"].Value.Replace(".", "", StringComparison.Ordinal).ToLowerInvariant();
        hour = half switch { "pm" when hour < 12 => hour + 12, "am" when hour == 12 => 0, _ => hour };
        int minute = Number(match.Groups["min"].Value), second = Number(match.Groups["sec"].Value);
        TimeSpan zone = Zone(match.Groups["zone"].Value);
        bool real = zone.Duration() <= TimeSpan.FromHours(14) && hour < 24 && minute < 60 && second < 60;
        return real ? new(new DateTimeOffset(day, new TimeOnly(hour, minute, second), zone), null) : null;
    }

    private static int Number(string text) => text.Length == 0 ? 0 : int.Parse(text, CultureInfo.InvariantCulture);

    // Without a zone: the time of the place.
    private static TimeSpan Zone(string text) =>
        text.Length == 0 ? TimeSpan.Zero
        : (text[0] == '-' ? -1 : 1) * new TimeSpan(int.Parse(text[1..3], CultureInfo.InvariantCulture),
            int.Parse(text[^2..], CultureInfo.InvariantCulture), 0);

    private const string Clocked = @"(?<h>[0-9]{1,2})[:h](?<min>[0-9][0-9])(?:[:m](?<sec>[0-9][0-9]))?(?:[.,][0-9]+)?";
    private const string TimeOfDay = @"(?:(?:[T,;\s_]+|\s+(?:at|um|à|alle|a las)\s+)" + Clocked
        + @"(?<zone>[+-][0-9][0-9]:?[0-9][0-9])?(?:\s*(?<half>[AaPp]\.?[Mm])\.?)?)?";

    // A time before the date, as in "14:30:05 17.02.2026".
    private const string TimeBefore = @"(?:(?<![0-9:])" + Clocked + @"[,;\s]+)?";

    [GeneratedRegex(TimeBefore + @"(?<![0-9])(?<y>[0-9]{4})[-/.](?<m>[0-9]{1,2})[-/.](?<d>[0-9]{1,2})(?![0-9])" + TimeOfDay,
        RegexOptions.CultureInvariant)]
    private static partial Regex Iso();

    [GeneratedRegex(
        @"(?<!\p{L})(?:(?<m>" + MonthName.Pattern + @")\p{L}*\.?\s+(?<d>[0-9]{1,2})(?![0-9])(?:\s+(?<h>[0-9]{1,2}):(?<min>[0-9]"
            + @"[0-9])(?::(?<sec>[0-9][0-9]))?[,\s]+(?<y>[0-9]{4})|[,\s]+(?<y>[0-9]{4})" + TimeOfDay + ")"
        + @"|(?<d>(?<![0-9])[0-9]{1,2})[-./\s]+(?:de\s+)?(?<m>" + MonthName.Pattern
            + @")\p{L}*[-./,\s]+(?:de\s+)?(?<y>[0-9]{4})" + TimeOfDay
        + @"|(?<y>(?<![0-9])[0-9]{4})[-./\s]+(?<m>" + MonthName.Pattern + @")\p{L}*[-./,\s]+(?<d>[0-9]{1,2})(?![0-9])"
            + TimeOfDay + ")",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Named();

    [GeneratedRegex(TimeBefore + @"(?<![0-9]|[0-9]\.)(?<a>[0-9]{1,2})(?<s>[-/.])(?<b>[0-9]{1,2})\k<s>(?<y>[0-9]{4}|[0-9][0-9])"
        + @"(?![0-9]|\.[0-9])" + TimeOfDay, RegexOptions.CultureInvariant)]
    private static partial Regex Numbers();

    [GeneratedRegex(@"^\s*(?<y>[0-9]{4})(?<m>[0-9]{2})(?<d>[0-9]{2})(?:[T_\s-]?(?<h>[0-9]{2}):?(?<min>[0-9]{2})"
        + @":?(?<sec>[0-9]{2})?)?\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex Digits();

    [GeneratedRegex(@"(?<!\p{L})(?:cal|kal|[ée]talon|due|valid|ver|rev|firmware|fw|software|build|copyright|export|print|report|"
        + @"template|standard|norm|limit|service|purchas|ip\b)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OtherDates();

    [GeneratedRegex(@"[0-9]:[0-9][0-9]")]
    private static partial Regex Clock();
}
