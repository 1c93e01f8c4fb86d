using System.Collections.Immutable;
using System.Text.Json;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>
/// Layouts that people who had not seen the reader invented, each with its truth beside it: fixtures/layouts. A file is read
/// right, value by value, or refused.
/// </summary>
public sealed class InventedLayouts
{
    private static readonly string Root = Path.Combine(Repository.Root, "fixtures", "layouts");

    // Clear to a person and refused all the same, each with a remedy: fixtures/layouts/README.md says why.
    private static readonly string[] Refused = File.ReadAllLines(Path.Combine(Root, "refused.txt"));

    public static TheoryData<string> Files =>
        [.. Directory.EnumerateFiles(Root, "*.truth.json", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(Root, f)[..^".truth.json".Length].Replace('\\', '/'))
            .Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Files))]
    public void IsReadRightOrRefused(string file)
    {
        using var truth = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(Root, file + ".truth.json")));
        TraceReading reading = Read(file, truth.RootElement);
        Trace[] taken = [.. reading.Traces.Where(t => t.Doubts.IsEmpty)];
        if (truth.RootElement.GetProperty("expect").GetString() == "refuse" || Refused.Contains(file))
        {
            Assert.Empty(taken);
            Assert.All(reading.Faults.Concat(reading.Traces.SelectMany(t => t.Doubts)), f => Assert.NotEmpty(f.Remedy));
            return;
        }

        bool mayAsk = truth.RootElement.TryGetProperty("may_ask", out JsonElement ask) && ask.ValueKind == JsonValueKind.True;
        JsonElement[] wanted = [.. truth.RootElement.GetProperty("traces").EnumerateArray()];
        Trace[] found = mayAsk && taken.Length == 0 ? [.. reading.Traces] : taken;
        if (mayAsk && found.Length == 0)
        {
            Assert.NotEmpty(reading.Faults);
            return;
        }

        Assert.True(found.Length > 0, string.Join('\n', reading.Faults.Concat(reading.Traces.SelectMany(t => t.Doubts))));
        List<Trace> left = [.. found];
        foreach (JsonElement trace in wanted)
        {
            Trace? same = left.Find(t => IsSame(trace, t));
            Assert.True(same is not null, $"no trace has the values of {trace.GetProperty("name_contains")}; there are "
                + $"{string.Join(", ", left.Select(t => t.Column))}");
            left.Remove(same);
        }

        Assert.True(mayAsk || left.Count == 0, $"read besides: {string.Join(", ", left.Select(t => t.Column))}");
    }

    [Fact]
    public void OnlyWhatIsThereIsListedAsRefused() =>
    Assert.All(Refused, f => Assert.True(File.Exists(Path.Combine(Root, f)), f));

    private static TraceReading Read(string file, JsonElement truth)
    {
        string? Option(string key) => truth.TryGetProperty("options", out JsonElement options)
            && options.TryGetProperty(key, out JsonElement value) ? value.GetString() : null;
        var known = new TraceReadOptions
        {
            FrequencyUnit = Option("frequency_unit") is { } frequency ? FrequencyUnits.Parse(frequency) : null,
            LevelUnit = Option("level_unit") is { } level ? LevelUnits.Parse(level) : null,
        };
        string path = Path.Combine(Root, file);
        TraceReading seen = TraceFile.Look(path, Path.GetFileName(file), known);
        ImmutableArray<SweepStats.Files.ReadFault> refusal = TraceFile.Taken(seen, Path.GetFileName(file), known).Faults;
        return refusal.IsEmpty ? seen : seen with
        {
            Faults = refusal,
            Traces = [.. seen.Traces.Select(t => t with { Doubts = t.Doubts.AddRange(refusal) })],
        };
    }

    private static bool IsSame(JsonElement truth, Trace trace)
    {
        double[] hertz = Numbers(truth, "frequency_hz"), levels = Numbers(truth, "level"), phases = Numbers(truth, "phase_deg");
        bool turned = trace.Axis.Hertz.Length == hertz.Length && hertz.Length > 1
            && (hertz[0] - hertz[^1]) * (trace.Axis.Hertz[0] - trace.Axis.Hertz[^1]) < 0;
        if (turned)
        {
            Array.Reverse(hertz);
            Array.Reverse(levels);
            Array.Reverse(phases);
        }

        string unit = truth.GetProperty("unit").GetString()!;
        return trace.Axis.Hertz.Length == hertz.Length && trace.Phases.IsEmpty == (phases.Length == 0)
            && hertz.Zip(trace.Axis.Hertz).All(f => Math.Abs(f.First - f.Second) <= 1e-12 * f.First)
            && levels.Zip(trace.Levels).All(l => IsLevel(l.First, unit, l.Second, trace.Unit))
            && phases.Zip(trace.Phases).All(p => Math.Abs(Math.IEEERemainder(p.First - p.Second, 360)) <= 1e-6);
    }

    // Pairs and linear magnitudes may come in dB.
    private static bool IsLevel(double truth, string unit, double read, LevelUnit? readUnit)
    {
        string symbol = readUnit?.Symbol() ?? "";
        double wanted = unit == symbol ? truth : unit == "linear magnitude" && symbol == "dB"
            ? 20 * Math.Log10(truth) : double.NaN;
        double got = unit == "dB" && symbol == "linear magnitude" ? 20 * Math.Log10(read) : read;
        wanted = unit == "dB" && symbol == "linear magnitude" ? truth : wanted;
        return got == wanted || Math.Abs(got - wanted) <= 1e-9 * Math.Max(1, Math.Abs(wanted));
    }

    private static double[] Numbers(JsonElement of, string key) =>
        of.TryGetProperty(key, out JsonElement values) && values.ValueKind == JsonValueKind.Array
            ? [.. values.EnumerateArray().Select(v => v.GetDouble())] : [];
}
