using SweepStats.Alignment;
using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>A section [[named_band]] of campaign.toml: a part of the band that matters to the user.</summary>
internal static class NamedBandSection
{
    // Every band is one more column of a page; more of them nobody reads.
    private const int MostBands = 12;

    /// <summary>The settings with the band; without it where something is wrong, which is then told.</summary>
    public static CampaignSettings Read(KeyReader keys, CampaignSettings settings) =>
        Named(keys, settings.Plan.NamedBands) is not { } named ? settings : settings with
        {
            Plan = settings.Plan with { NamedBands = settings.Plan.NamedBands.Add(named) },
            NamedBands = settings.NamedBands.Add((named, keys.Line)),
        };

    private static NamedBand? Named(KeyReader keys, ImmutableArray<NamedBand> earlier)
    {
        string? name = keys.Text("name");
        double? start = keys.Number("start_hz", 0, SettingsReader.HighestHertz);
        double? stop = keys.Number("stop_hz", 0, SettingsReader.HighestHertz);
        keys.Require("name", "start_hz", "stop_hz");
        if (earlier.Length == MostBands)
        {
            keys.Refuse(keys.Line, FormattableString.Invariant($"there are more than {MostBands} named bands"),
                "keep those that matter");
            return null;
        }

        if (!MayBeCalled(name, keys, earlier))
        {
            return null;
        }

        return SharedBand.IsReversed(keys, start, stop) || name is null || start is null || stop is null ? null
            : new NamedBand(name, new FrequencyBand(new Hertz(start.Value), new Hertz(stop.Value)));
    }

    private static bool MayBeCalled(string? name, KeyReader keys, ImmutableArray<NamedBand> earlier)
    {
        if (name is not null && NameRule.Problem(name) is { } problem)
        {
            keys.Refuse("name", $"the name of the band {problem}", "shorten or correct it");
            return false;
        }

        bool taken = earlier.Any(e => string.Equals(e.Name, name, StringComparison.OrdinalIgnoreCase));
        if (taken)
        {
            keys.Refuse("name", $"there is another band of the name '{name}'", "give each band its own name");
        }

        return !taken;
    }

    /// <summary>
    /// Bands without a frequency to analyse. Where the sweeps share none at all, their comparison has more to say.
    /// </summary>
    public static IEnumerable<ReadFault> Empty(CampaignSettings settings, ImmutableArray<Sweep> sweeps)
    {
        if (settings.NamedBands.IsEmpty || SharedBand.Of(settings, sweeps) is not { } shared
            || Aligner.SharedGrid(sweeps, settings.Plan.Band, settings.Plan.Interpolate) is not { } grid)
        {
            return [];
        }

        return from band in settings.NamedBands
               where !grid.Hertz.ToArray().Any(hertz => band.Named.Band.Contains(new Hertz(hertz)))
               select Fault(band.Named, band.Line, shared, grid);
    }

    private static ReadFault Fault(NamedBand named, int line, SharedBand shared, FrequencyGrid grid)
    {
        (double start, double stop) = (named.Band.Start.Value, named.Band.Stop.Value);
        string remedy = shared.MissingPower(start, stop) is { } power
            ? FormattableString.Invariant($"frequencies are in Hz: did you mean {start:R}{power}?")
            : "widen or move it; the nearest analysed frequency is "
                + FormattableString.Invariant(
                    $"{grid.Hertz.ToArray().MinBy(hertz => Math.Max(start - hertz, hertz - stop)):R} Hz");
        return new ReadFault(
            CampaignFolder.SettingsName, line,
            FormattableString.Invariant($"no analysed frequency lies in the band '{named.Name}', {start:R} to {stop:R} Hz"),
            remedy);
    }
}
