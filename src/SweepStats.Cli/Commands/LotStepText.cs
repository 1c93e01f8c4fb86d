using System.Globalization;
using SweepStats.Quantities;
using SweepStats.Rehearsal;

namespace SweepStats.Cli.Commands;

/// <summary>Steps of lots as they are written on the command line: B:-6:300MHz-600MHz.</summary>
internal static class LotStepText
{
    /// <summary>Steps as lot:change in dB:start-stop, both ends included; what does not read so is told.</summary>
    public static ImmutableArray<LotStep> Parse(string[] texts, List<string> wrong)
    {
        var steps = ImmutableArray.CreateBuilder<LotStep>();
        foreach (string text in texts)
        {
            if (text.Split(':') is not [{ Length: > 0 } lot, var change, var band]
                || !double.TryParse(change, NumberStyles.Float, CultureInfo.InvariantCulture, out double db)
                || !double.IsFinite(db)
                || Band(band) is not (Hertz start, Hertz stop))
            {
                wrong.Add($"--lot-step {text}: a step reads B:-6:300MHz-600MHz, its lot, the change of its shielding in dB, and "
                    + "from where to where");
            }
            else if (start > stop)
            {
                wrong.Add($"--lot-step {text}: the step must stop above its start");
            }
            else
            {
                steps.Add(new LotStep(lot, new Decibels(db), new FrequencyBand(start, stop)));
            }
        }

        return steps.ToImmutable();
    }

    // A dash may be a power's sign too, as in 1e-3GHz: the one that parts the band has a frequency on each side.
    private static (Hertz Start, Hertz Stop)? Band(string text)
    {
        for (int dash = text.IndexOf('-'); dash >= 0; dash = text.IndexOf('-', dash + 1))
        {
            if (FrequencyText.Parse(text[..dash]) is { } start && FrequencyText.Parse(text[(dash + 1)..]) is { } stop)
            {
                return (start, stop);
            }
        }

        return null;
    }
}
