using System.Globalization;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;

namespace SweepStats.Cli.Commands;

/// <summary>Faults of a rehearsal as they are written on the command line: fields with colons between.</summary>
internal static class FaultText
{
    /// <summary>Transmitters as frequency:dB over the floor[:share of sweeps, else 1]; what does not read so is told.</summary>
    public static ImmutableArray<AmbientCarrier> Ambient(string[] texts, List<string> wrong)
    {
        var carriers = ImmutableArray.CreateBuilder<AmbientCarrier>();
        foreach (string text in texts)
        {
            string[] parts = text.Split(':');
            double[] numbers = Numbers(parts.AsSpan(1));
            if (numbers.Length is 1 or 2 && Array.TrueForAll(numbers, double.IsFinite)
                && FrequencyText.Parse(parts[0]) is { } frequency)
            {
                carriers.Add(new AmbientCarrier(frequency, new Decibels(numbers[0]), numbers.Length > 1 ? numbers[1] : 1));
            }
            else
            {
                wrong.Add($"--ambient {text}: a transmitter reads 433MHz:20 or 433MHz:20:0.5, its frequency, its level over the "
                    + "floor in dB and the share of sweeps that see it");
            }
        }

        return carriers.ToImmutable();
    }

    /// <summary>Sweeps as role:number:offset in dB[:rms of a standing wave in dB]; what does not read so is told.</summary>
    public static ImmutableArray<OddSweep> OddSweeps(string[] texts, List<string> wrong)
    {
        var sweeps = ImmutableArray.CreateBuilder<OddSweep>();
        foreach (string text in texts)
        {
            string[] parts = text.Split(':');
            double[] numbers = Numbers(parts.AsSpan(1));
            if (numbers.Length is 2 or 3 && Array.TrueForAll(numbers, double.IsFinite)
                && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out int number)
                && Enum.GetValues<SweepRole>().Where(r => r.ToString().Equals(parts[0], StringComparison.OrdinalIgnoreCase))
                    .ToArray() is [var role])
            {
                sweeps.Add(new OddSweep(role, number, numbers[1], numbers.Length > 2 ? numbers[2] : 0));
            }
            else
            {
                wrong.Add($"--odd {text}: a sweep that is off reads reference:3:2 or covered:1:0:0.5, its role, its number, its "
                    + "offset in dB and the rms of a standing wave in dB");
            }
        }

        return sweeps.ToImmutable();
    }

    private static double[] Numbers(ReadOnlySpan<string> parts)
    {
        var numbers = new double[parts.Length];
        for (int i = 0; i < parts.Length; i++)
        {
            numbers[i] = double.TryParse(parts[i], NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
                ? value : double.NaN;
        }

        return numbers;
    }
}
