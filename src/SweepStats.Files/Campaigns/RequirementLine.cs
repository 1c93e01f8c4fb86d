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
            if (!MayAsk(points[i], i + 1, faults) || !GoesOn(points, i, faults))
            {
                return null;
            }
        }

        return Requirement.Line([.. points.Select(p => new RequirementPoint(new Hertz(p.Hertz), new Decibels(p.Db)))]);
    }

    private static bool MayAsk(StatedPoint point, int number, FaultList faults)
    {
        bool may = Requirement.CanAskFor(point.Db);
        if (!may)
        {
            faults.Add(point.Line, FormattableString.Invariant($"point {number} of the requirement asks for {point.Db:R} dB"),
                FormattableString.Invariant($"a required shielding is {Requirement.LeastDb} to {Requirement.MostDb} dB"));
        }

        return may;
    }

    private static bool GoesOn(ImmutableArray<StatedPoint> points, int i, FaultList faults)
    {
        StatedPoint point = points[i];
        bool rises = point.Hertz is > 0 and <= SettingsReader.HighestHertz && (i == 0 || point.Hertz > points[i - 1].Hertz);
        if (!rises)
        {
            faults.Add(point.Line,
                FormattableString.Invariant($"point {i + 1} of the requirement, {point.Hertz:R} Hz and {point.Db:R} ")
                    + "dB, does not continue a rising line",
                "frequencies are positive and rise from point to point");
        }

        return rises;
    }

    /// <summary>Reads a file of points.</summary>
    public static (Requirement? Requirement, string? Sha256) Read(string path, FaultList faults)
    {
        if (CsvTable.Read(path, faults) is not { } table)
        {
            return (null, null);
        }

        ImmutableArray<StatedPoint> points = Points(table, faults);
        return (faults.Any ? null : Of(points, faults), table.Sha256);
    }

    private static ImmutableArray<StatedPoint> Points(CsvTable table, FaultList faults)
    {
        ImmutableArray<string> header = [.. table.Header.Select(name => name.Trim())];
        (int hertz, int db) = (header.IndexOf("frequency_hz"), header.IndexOf("se_db"));
        if (hertz < 0 || db < 0)
        {
            faults.Add(table.HeaderLine, "the columns are not frequency_hz and se_db",
                "write 'frequency_hz,se_db' into the first line");
            return [];
        }

        if (header.Length > 2)
        {
            string more = header[Enumerable.Range(0, header.Length).First(i => i != hertz && i != db)];
            faults.Add(table.HeaderLine, $"there is a column '{more}' beside frequency_hz and se_db",
                "remove it; a limits file holds those two");
            return [];
        }

        return [.. table.Rows.Select(row => Point(row, hertz, db, faults)).OfType<StatedPoint>()];
    }

    private static StatedPoint? Point(CsvRow row, int hertz, int db, FaultList faults)
    {
        if (row.Fields.Length == 2 && IsNumber(row.Fields[hertz], out double f) && IsNumber(row.Fields[db], out double se))
        {
            return new(f, se, row.Line);
        }

        faults.Add(row.Line, "the row is not two numbers", "write a frequency in Hz and a shielding in dB with decimal points");
        return null;
    }

    private static bool IsNumber(string field, out double value) =>
        StrictNumber.TryParse(System.Text.Encoding.UTF8.GetBytes(field.Trim()), (byte)'.', 0, out value);
}
