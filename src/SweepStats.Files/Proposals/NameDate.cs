using System.Globalization;
using System.Text.RegularExpressions;

namespace SweepStats.Files.Proposals;

/// <summary>A day, and perhaps a time of day, that a name of a file or folder holds.</summary>
/// <param name="Day">The day.</param>
/// <param name="Clock">The time of day; null where the name has none.</param>
internal sealed partial record NameDate(DateOnly Day, TimeOnly? Clock)
{
    /// <summary>The date in a name and the name without it; no date where there is none that can be told beyond doubt.</summary>
    /// <param name="name">The name.</param>
    /// <param name="rest">The name without the date.</param>
    public static NameDate? Find(string name, out string rest)
    {
        foreach (Match match in Dates().Matches(name))
        {
            if (DayOf(match) is { } day)
            {
                rest = string.Concat(name.AsSpan(0, match.Index), " ", name.AsSpan(match.Index + match.Length));
                return new NameDate(day, TimeOf(match));
            }
        }

        rest = name;
        return null;
    }

    private static DateOnly? DayOf(Match match)
    {
        int Number(string group) => int.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);
        (int year, int month, int day) = (Number("y"), Number("m"), Number("d"));
        return year is >= 1990 and < 2200 && month is >= 1 and <= 12 && day >= 1 && day <= DateTime.DaysInMonth(year, month)
            ? new DateOnly(year, month, day) : null;
    }

    private static TimeOnly? TimeOf(Match match)
    {
        int Number(string group) =>
            match.Groups[group] is { Success: true } found ? int.Parse(found.Value, CultureInfo.InvariantCulture) : 0;
        return match.Groups["h"].Success ? new TimeOnly(Number("h"), Number("min"), Number("s")) : null;
    }

    // Year first, or the day first with points between, as DIN 5008 has it. A clock has two digits for each part.
    [GeneratedRegex(
        @"(?<![0-9])(?:(?<y>[0-9]{4})(?<p>[-_.]?)(?<m>[0-9]{2})\k<p>(?<d>[0-9]{2})|(?<d>[0-9]{1,2})\.(?<m>[0-9]{1,2})"
        + @"\.(?<y>[0-9]{4}))"
        + @"(?:(?:[T_\-, ]|, | - |_-_)(?<h>[01][0-9]|2[0-3])[-:._h]?(?<min>[0-5][0-9])(?:[-:._m]?(?<s>[0-5][0-9])s?(?:[.,]"
        + @"[0-9]{1,6})?)?)?(?![0-9])",
        RegexOptions.CultureInvariant)]
    private static partial Regex Dates();
}
