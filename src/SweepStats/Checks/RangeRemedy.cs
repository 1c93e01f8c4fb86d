using System.Globalization;

namespace SweepStats.Checks;

/// <summary>What gains dynamic range at the bench, in the words of a next step.</summary>
/// <remarks>Bandwidth moves the floor by 10 log of its ratio, averaging power the detection limit by about 5 log of the number.</remarks>
public static class RangeRemedy
{
    /// <summary>"To gain 4.0 dB: 4 dB more source power, or …".</summary>
    /// <param name="missing">Range missing in dB, above 0.</param>
    public static string For(double missing)
    {
        string[] ways = [.. Ways(missing)];
        return string.Create(CultureInfo.InvariantCulture, $"To gain {missing:0.0} dB: {string.Join(", or ", ways)}. Several of them together add up.");
    }

    // Past these ends neither bandwidth nor averaging is practical.
    private static IEnumerable<string> Ways(double missing)
    {
        double bandwidth = Math.Pow(10, missing / 10);
        yield return string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(missing):0} dB more source power");
        if (missing <= 40)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"a resolution bandwidth {(bandwidth < 10 ? Math.Round(bandwidth, 1) : Math.Ceiling(bandwidth)):0.#} times narrower");
        }

        if (missing <= 30)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(missing):0} dB less input attenuation as far as overload allows");
        }

        yield return "a preamplifier";
        if (missing <= 10)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(bandwidth * bandwidth):0} times more averaging");
        }
    }
}
