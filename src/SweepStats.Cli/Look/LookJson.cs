using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using SweepStats.Files;
using SweepStats.Files.Traces;
using SweepStats.Sweeps;

namespace SweepStats.Cli.Look;

/// <summary>How files were understood, as a JSON array with one object a file. Numbers are exact.</summary>
internal sealed class LookJson : IDisposable
{
    // As in summary.json: µ stays readable, and nothing here is put into HTML.
    private static readonly JsonWriterOptions Options =
        new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly Utf8JsonWriter _json;

    /// <summary>Opens the array; the stream stays the caller's.</summary>
    public LookJson(Stream to)
    {
        _json = new Utf8JsonWriter(to, Options);
        _json.WriteStartArray();
    }

    /// <summary>Whether every reading stands in it, and not the first and last alone.</summary>
    public bool WithValues { get; init; }

    /// <summary>A file that could be read.</summary>
    public void Add(string file, SeenFile seen)
    {
        _json.WriteStartObject();
        _json.WriteString("file", file);
        Read(seen.Reading);
        _json.WriteBoolean("usable", seen.Refusal.IsEmpty);
        Faults("refusal", seen.Refusal);
        _json.WriteEndObject();
        _json.Flush();
    }

    /// <summary>A file that could not.</summary>
    public void Refuse(string file, TraceReading reading)
    {
        _json.WriteStartObject();
        _json.WriteString("file", file);
        _json.WritePropertyName("error");
        Fault(reading.Faults[0]);
        Faults("more", reading.Faults.RemoveAt(0));
        _json.WriteEndObject();
        _json.Flush();
    }

    /// <summary>Closes the array: nothing comes after.</summary>
    public void End() => _json.WriteEndArray();

    /// <summary>Hands on what is not written yet; it closes no array.</summary>
    public void Dispose() => _json.Dispose();

    private void Read(TraceReading reading)
    {
        _json.WriteStartArray("traces");
        foreach (Trace trace in reading.Traces)
        {
            Trace(trace, reading.Settings);
        }

        _json.WriteEndArray();
        Settings(reading.Settings);
        _json.WriteStartArray("assumptions");
        foreach (string assumption in reading.Assumptions)
        {
            _json.WriteStringValue(assumption);
        }

        _json.WriteEndArray();
    }

    private void Trace(Trace trace, ReceiverSettings shared)
    {
        _json.WriteStartObject();
        _json.WriteString("name", trace.Column);
        _json.WriteString("quantity", trace.Quantity);
        _json.WriteString("unit", trace.Unit?.Symbol());
        _json.WriteNumber("points", trace.Levels.Length);
        if (!trace.Phases.IsEmpty)
        {
            _json.WriteBoolean("phase", true);
        }

        Point("first", trace, 0);
        Point("last", trace, trace.Levels.Length - 1);
        if (WithValues)
        {
            ReadingsJson.Write(trace, _json);
        }

        Word("blank", trace.Blank);
        Faults("doubts", trace.Doubts);
        Word("taken_at", trace.TakenAt?.ToString("yyyy-MM-ddTHH:mm:ss.FFFFFFFK", CultureInfo.InvariantCulture));
        if (trace.Settings != shared && trace.Settings != ReceiverSettings.Unstated)
        {
            Settings(trace.Settings);
        }

        _json.WriteEndObject();
    }

    private void Point(string key, Trace trace, int index)
    {
        if (index < 0 || index >= trace.Levels.Length)
        {
            _json.WriteNull(key);
            return;
        }

        _json.WriteStartObject(key);
        _json.WriteNumber("frequency_hz", trace.Axis.Hertz[index]);
        if (double.IsFinite(trace.Levels[index]))
        {
            _json.WriteNumber("level", trace.Levels[index]);
        }
        else
        {
            _json.WriteNull("level");
        }

        _json.WriteEndObject();
    }

    private void Settings(ReceiverSettings settings)
    {
        _json.WriteStartObject("settings");
        Number("rbw_hz", settings.ResolutionBandwidthHz);
        Number("vbw_hz", settings.VideoBandwidthHz);
        Number("attenuation_db", settings.AttenuationDb);
        Number("reference_level", settings.ReferenceLevel);
        Word("detector", settings.Detector);
        Word("averaging", settings.Averaging);
        Number("averages", settings.Averages);
        Number("sweep_time_s", settings.SweepTimeSeconds);
        Word("trace_mode", settings.TraceMode);
        Word("preamplifier", settings.Preamplifier);
        Number("source_power_dbm", settings.SourcePowerDbm);
        _json.WriteEndObject();
    }

    private void Faults(string key, ImmutableArray<ReadFault> faults)
    {
        if (faults.IsEmpty)
        {
            return;
        }

        _json.WriteStartArray(key);
        foreach (ReadFault fault in faults)
        {
            Fault(fault);
        }

        _json.WriteEndArray();
    }

    private void Fault(ReadFault fault)
    {
        _json.WriteStartObject();
        _json.WritePropertyName("line");
        if (fault.Line is { } line)
        {
            _json.WriteNumberValue(line);
        }
        else
        {
            _json.WriteNullValue();
        }

        _json.WriteString("problem", fault.Problem);
        _json.WriteString("remedy", fault.Remedy);
        _json.WriteEndObject();
    }

    private void Number(string key, double? number)
    {
        if (number is { } value && double.IsFinite(value))
        {
            _json.WriteNumber(key, value);
        }
    }

    private void Word(string key, string? word)
    {
        if (word is not null)
        {
            _json.WriteString(key, word);
        }
    }
}
