using System.Globalization;
using System.Text;
using SweepStats.Files.Traces.Text;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>The cells of a row of sweeps.csv as names, times and numbers; null where a cell is empty or wrong.</summary>
internal sealed class ManifestCells(int line, Func<string, string> cell, FaultList faults)
{
    private static readonly string[] Iso = ["yyyy-MM-dd", "yyyy-MM-ddTHH:mm", "yyyy-MM-ddTHH:mm:ss",
        "yyyy-MM-ddTHH:mm:ss.FFFFFFF", "yyyy-MM-ddTHH:mmK", "yyyy-MM-ddTHH:mm:ssK", "yyyy-MM-ddTHH:mm:ss.FFFFFFFK"];

    // Spreadsheets part date and time by a blank.
    private static readonly string[] TimeForms = [.. Iso, .. Iso.Select(f => f.Replace('T', ' '))];

    public string? Text(string column) => cell(column) is { Length: > 0 } text ? text : null;

    public string? Name(string column)
    {
        string? name = Text(column);
        if (name is not null && NameRule.Problem(name) is { } problem)
        {
            faults.Add(line, $"the {column} {problem}", "shorten or correct it");
        }

        return name;
    }

    public void RequireSpecimen(string? specimen)
    {
        if (specimen is null)
        {
            faults.Add(line, "a covered sweep needs its specimen", "fill in the column 'specimen'");
        }
    }

    // Taken for all specimens: a name would be dropped in silence.
    public void RefuseSpecimen(SweepRole role, string? name)
    {
        if (name is not null)
        {
            faults.Add(line, $"a {role.Name()} sweep is of no specimen, and has '{name}'",
                "leave lot, specimen and placement empty there, or correct the role");
        }
    }

    public DateTimeOffset? Time(string column)
    {
        if (Text(column) is not { } text)
        {
            return null;
        }

        if (DateTimeOffset.TryParseExact(text, TimeForms, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal,
            out DateTimeOffset time))
        {
            return time;
        }

        faults.Add(line, $"'{text}' is not a time", "write ISO 8601, such as 2026-03-05T14:30:00 or 2026-03-05T14:30:00+01:00");
        return null;
    }

    public double? Level(string column)
    {
        if (Text(column) is not { } text)
        {
            return null;
        }

        if (StrictNumber.TryParse(Encoding.UTF8.GetBytes(text), (byte)'.', 0, out double level))
        {
            return level;
        }

        faults.Add(line, $"'{text}' is not a level in dBm", "write a number with a decimal point");
        return null;
    }
}
