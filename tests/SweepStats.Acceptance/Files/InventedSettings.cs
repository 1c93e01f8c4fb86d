using System.Text.Json;
using SweepStats.Files.Traces;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>Settings that invented files state (fixtures/layouts): nearly all are read, none wrong.</summary>
public sealed class InventedSettings
{
    private static readonly string Root = Path.Combine(Repository.Root, "fixtures", "layouts");

    [Fact]
    public void NearlyAllNumbersAndDatesAreReadAndNoneWrong()
    {
        (int stated, int read) = (0, 0);
        List<string> wrong = [];
        foreach (string truthFile in Directory.EnumerateFiles(Root, "*.truth.json", SearchOption.AllDirectories))
        {
            using var truth = JsonDocument.Parse(File.ReadAllBytes(truthFile));
            string file = truthFile[..^".truth.json".Length];
            TraceReading reading =
                TraceFile.Look(file, Path.GetFileName(file), new TraceReadOptions { FrequencyUnit = FrequencyUnit.Megahertz });
            if (truth.RootElement.GetProperty("expect").GetString() != "read" || reading.Traces.IsEmpty)
            {
                continue;
            }

            foreach (JsonProperty setting in truth.RootElement.GetProperty("settings").EnumerateObject()
                .Where(s => s.Value.ValueKind == JsonValueKind.Number))
            {
                double?[] found =
                    [.. reading.Traces.Select(t => Number(t.Settings, setting.Name) ?? Number(reading.Settings, setting.Name))];
                stated++;
                read += found.Any(f => f is not null) ? 1 : 0;
                wrong.AddRange(found.Where(
                    f => f is { } value && Math.Abs(value - setting.Value.GetDouble()) > 1e-9 * Math.Max(1, Math.Abs(value)))
                    .Select(f => $"{file}: {setting.Name} is {f}"));
            }
        }

        Assert.Empty(wrong);
        Assert.True(stated > 100, $"{stated}");
        Assert.True(read >= 0.97 * stated, $"{read} of {stated}");
    }

    private static double? Number(ReceiverSettings settings, string key) => key switch
    {
        "rbw_hz" => settings.ResolutionBandwidthHz,
        "vbw_hz" => settings.VideoBandwidthHz,
        "attenuation_db" => settings.AttenuationDb,
        "reference_level" => settings.ReferenceLevel,
        "sweep_time_s" => settings.SweepTimeSeconds,
        _ => settings.Averages,
    };
}
