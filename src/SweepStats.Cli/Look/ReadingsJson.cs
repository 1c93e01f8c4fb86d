using System.Text.Json;
using SweepStats.Files.Traces;

namespace SweepStats.Cli.Look;

/// <summary>All readings of a trace as arrays of numbers, to the last bit; null where one is not finite.</summary>
internal static class ReadingsJson
{
    // What is handed to the stream at a time, so that a big trace does not stand in memory a second time.
    private const int Portion = 4096;

    /// <summary>Frequencies in Hz, levels in the trace's unit; where known, phases in degrees, reverse levels in dB.</summary>
    public static void Write(Trace trace, Utf8JsonWriter json)
    {
        Numbers("frequencies_hz", trace.Axis.Hertz, json);
        Numbers("levels", trace.Levels, json);
        if (!trace.Phases.IsEmpty)
        {
            Numbers("phases_deg", trace.Phases, json);
        }

        if (!trace.ReverseLevels.IsEmpty)
        {
            Numbers("reverse_levels_db", trace.ReverseLevels, json);
        }
    }

    private static void Numbers(string key, ImmutableArray<double> numbers, Utf8JsonWriter json)
    {
        json.WriteStartArray(key);
        for (int i = 0; i < numbers.Length; i++)
        {
            Number(numbers[i], json);
            if (i % Portion == Portion - 1)
            {
                json.Flush();
            }
        }

        json.WriteEndArray();
    }

    private static void Number(double number, Utf8JsonWriter json)
    {
        if (double.IsFinite(number))
        {
            json.WriteNumberValue(number);
        }
        else
        {
            json.WriteNullValue();
        }
    }
}
