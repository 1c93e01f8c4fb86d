
namespace SweepStats.Checks;

/// <summary>What gains dynamic range at the bench, in the words of a next step.</summary>
/// <remarks>
/// Bandwidth moves the floor by 10 log of its ratio, averaging power the detection limit by about 5 log of the number.
/// </remarks>
public static class RangeRemedy
{
    /// <summary>"To gain 4.0 dB: 4 dB more source power, or …".</summary>
    /// <param name="missing">Range missing in dB, above 0.</param>
    /// <param name="overloaded">The receiver is overloaded somewhere: what brings more level to it is left out.</param>
    /// <param name="attenuationDb">
    /// Input attenuation that is in and could be taken out, in dB; null where nobody states it.
    /// </param>
    public static string For(double missing, bool overloaded = false, double? attenuationDb = null)
    {
        string[] ways = [.. Ways(missing, attenuationDb).Where(way => !overloaded || !way.MoreLevel).Select(way => way.Words)];
        string gain = string.Create(Amount.Print,
            $"To gain {missing:0.0} dB{(overloaded ? " without more level at a receiver that is overloaded" : string.Empty)}");
        return ways.Length switch
        {
            0 => $"{gain} no setting is enough: measure with another set-up.",
            1 => $"{gain}: {ways[0]}.",
            _ => $"{gain}: {string.Join(", or ", ways)}. Several of them together add up.",
        };
    }

    // No source, attenuator or preamplifier of a bench gives more (common practice, no source).
    private const double MostOneSettingGives = 30;

    // Past these ends neither bandwidth nor averaging is practical.
    private static IEnumerable<Way> Ways(double missing, double? attenuationDb)
    {
        double bandwidth = Math.Pow(10, missing / 10);
        if (missing <= MostOneSettingGives)
        {
            yield return new Way(string.Create(Amount.Print, $"{Math.Ceiling(missing):0} dB more source power"), MoreLevel: true);
        }

        if (missing <= 40)
        {
            yield return new Way(string.Create(Amount.Print,
                $"a resolution bandwidth {(bandwidth < 10 ? Math.Ceiling(bandwidth * 10) / 10 : Math.Ceiling(bandwidth)):0.#} "
                    + $"times narrower"), MoreLevel: false);
        }

        if (missing <= MostOneSettingGives && attenuationDb is not 0)
        {
            yield return new Way(Attenuation(Math.Ceiling(missing), attenuationDb), MoreLevel: true);
        }

        if (missing <= MostOneSettingGives)
        {
            yield return new Way("a preamplifier", MoreLevel: true);
        }

        if (missing <= 10)
        {
            yield return new Way(string.Create(Amount.Print, $"{Math.Ceiling(bandwidth * bandwidth):0} times more averaging"),
                MoreLevel: false);
        }
    }

    // What is not in cannot be taken out.
    private static string Attenuation(double missing, double? there) => there is { } db && db < missing
        ? string.Create(Amount.Print, $"{db:0.#} dB of it by taking out the input attenuation as far as overload allows")
        : string.Create(Amount.Print, $"{missing:0} dB less input attenuation as far as overload allows");

    private sealed record Way(string Words, bool MoreLevel);
}
