using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Files.Traces.Text;
using SweepStats.Quantities;

namespace SweepStats.Files.Campaigns;

/// <summary>
/// A requirement over frequency, from points in campaign.toml or from a file with the columns frequency_hz and se_db.
/// </summary>
internal static class RequirementLine
{
    /// <summary>Checks points, each with its line, and joins them.</summary>
    public static Requirement? Of(ImmutableArray<StatedPoint> points, FaultList faults)
    {
        if (points.Length < 2)
        {
            faults.Add(points.IsEmpty ? null : points[0].Line, "a requirement over frequency needs at least two points",
                "add points, or use se_db for a constant one");
            return null;
        }

        for (int i = 0; i < points.Length; i++)
        {
            if (!Requirement.CanAskFor(points[i].Db))
            {
                faults.Add(
                    points[i].Line, FormattableString.Invariant($"point {i + 1} of the requirement asks for {points[i].Db:R} dB"),
                    FormattableString.Invariant($"a required shielding is {Requirement.LeastDb} to {Requirement.MostDb} dB"));
                return null;
            }

            if (!(points[i].Hertz is > 0 and <= SettingsReader.HighestHertz) || (i > 0 && points[i].Hertz <= points[i - 1].Hertz))
            {
                faults.Add(
                    points[i].Line,
                    FormattableString.Invariant($"point {i + 1} of the requirement, {points[i].Hertz:R} Hz and {points[i].Db:R} ")
                        + "dB, does not continue a rising line",
                    "frequencies are positive and rise from point to point");
                return null;
            }
        }

        return Requirement.Line([.. points.Select(p => new RequirementPoint(new Hertz(p.Hertz), new Decibels(p.Db)))]);
    }

    /// <summary>Reads a file of points.</summary>
    public static (Requirement? Requirement, string? Sha256) Read(string path, FaultList faults)
    {
        if (CsvTable.Read(path, faults) is not { } table)
        {
            return (null, null);
        }

        ImmutableArray<string> header = [.. table.Header.Select(name => name.Trim())];
        int hertz = header.IndexOf("frequency_hz");
        int db = header.IndexOf("se_db");
        if (hertz < 0 || db < 0)
        {
            faults.Add(table.HeaderLine, "the columns are not frequency_hz and se_db",
                "write 'frequency_hz,se_db' into the first line");
            return (null, table.Sha256);
        }

        if (header.Length > 2)
        {
            string more = header[Enumerable.Range(0, header.Length).First(i => i != hertz && i != db)];
            faults.Add(table.HeaderLine, $"there is a column '{more}' beside frequency_hz and se_db",
                "remove it; a limits file holds those two");
            return (null, table.Sha256);
        }

        var points = ImmutableArray.CreateBuilder<StatedPoint>();
        foreach ((int line, ImmutableArray<string> fields) in table.Rows)
        {
            if (fields.Length == 2 && IsNumber(fields[hertz], out double f) && IsNumber(fields[db], out double se))
            {
                points.Add(new(f, se, line));
            }
            else
            {
                faults.Add(line, "the row is not two numbers",
                    "write a frequency in Hz and a shielding in dB with decimal points");
            }
        }

        return (faults.Any ? null : Of(points.ToImmutable(), faults), table.Sha256);
    }

    private static bool IsNumber(string field, out double value) =>
        StrictNumber.TryParse(System.Text.Encoding.UTF8.GetBytes(field.Trim()), (byte)'.', 0, out value);
}
