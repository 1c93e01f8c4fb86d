using System.Buffers;
using System.Globalization;
using System.Text.Json;
using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Report.Drawing;
using SweepStats.Report.Pages;
using SweepStats.Report.Text;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Report.Sheets;

/// <summary>
/// What pictures show in figures, for the script of the page: values at a frequency and a part of the band. A value is
/// "41.2,40.1,42.3" with its interval and "40.2?" without one, a bound "38.1+", a range "40.8,47.2"; "-" where nothing is known.
/// Limits are rounded away from the claim, as everywhere.
/// </summary>
internal static class PlottedValues
{
    private const string Unknown = "-";

    /// <summary>Writes the rows at some places of a grid.</summary>
    public static void Write(HtmlWriter html, FrequencyGrid grid, int[] places, params IEnumerable<PlottedRow> rows)
    {
        var text = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(text))
        {
            json.WriteStartObject();
            json.WriteStartArray("mhz");
            foreach (int place in places)
            {
                json.WriteRawValue(Mega(grid[place].Value));
            }

            json.WriteEndArray();
            Gaps(json, grid);
            json.WriteStartArray("rows");
            foreach (PlottedRow row in rows)
            {
                json.WriteStartObject();
                json.WriteString("kind", row.Kind);
                json.WriteString("name", row.Name);
                json.WriteString("at", string.Join(' ', places.Select(row.At)));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        html.Open("script", new Attr("type", "application/json")).Drawing(text.WrittenSpan).Close();
    }

    /// <summary>What is known of one specimen.</summary>
    public static PlottedRow Of(ShieldingCurve curve) =>
        new("value", PrintedNames.SpecimenLabel(curve.Name), place => Token(curve.Readings[place]));

    /// <summary>From the lowest to the highest of several specimens, bounds standing in for values.</summary>
    public static PlottedRow Of(ImmutableArray<ShieldingCurve> curves, RangeOfSpecimens range) => new("range",
        Printed.Count(curves.Length, "specimen"),
        place => Token(range.Slices[place], curves.Any(c => c.Readings[place] is ShieldingReading.AtLeast)));

    /// <summary>What is asked.</summary>
    public static PlottedRow Of(Requirement asked, FrequencyGrid grid) => new("asked", "required",
        place => asked.At(grid[place]) is { } level ? Ascii(Printed.Plain(Math.Round(level.Value, 2))) : Unknown);

    private static string Token(Slice range, bool open) => !double.IsFinite(range.Low) ? Unknown
        : $"{Low(range.Low)},{High(range.High)}{(open ? "+" : string.Empty)}";

    private static string Token(ShieldingReading reading) => reading switch
    {
        ShieldingReading.Measured { Shielding: { Value.Value: var value, Low.Value: var low, High.Value: var high } } =>
            $"{Tenths(value)},{Low(low)},{(double.IsFinite(high) ? High(high) : string.Empty)}",
        ShieldingReading.AtLeast bound => $"{Low(bound.Bound.Value)}+",
        ShieldingReading.Unrepeated single => $"{Tenths(single.Indication.Value)}?",
        _ => Unknown,
    };

    private static void Gaps(Utf8JsonWriter json, FrequencyGrid grid)
    {
        json.WriteStartArray("gaps");
        foreach (FrequencyBand gap in FrequencyGaps.Of(grid))
        {
            json.WriteStartArray();
            json.WriteRawValue(Mega(gap.Start.Value));
            json.WriteRawValue(Mega(gap.Stop.Value));
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    // Seven digits tell neighbours apart on every grid that a page draws.
    private static string Mega(double hertz)
    {
        string digits = (hertz / 1e6).ToString("G7", CultureInfo.InvariantCulture);
        return double.Parse(digits, CultureInfo.InvariantCulture).ToString("0.##########", CultureInfo.InvariantCulture);
    }

    private static string Tenths(double value) => Ascii(PrintedLevel.Ratio(value))[..^" dB".Length];

    private static string Low(double value) => Ascii(Printed.LowTenths(value));

    private static string High(double value) => Ascii(Printed.HighTenths(value));

    private static string Ascii(string number) => number.Replace('−', '-');
}
