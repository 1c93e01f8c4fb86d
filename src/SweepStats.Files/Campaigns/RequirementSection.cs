using SweepStats.Bands;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>The section [requirement] of campaign.toml: one value, points, or a file of points.</summary>
internal static class RequirementSection
{
    private static readonly string[] Statements = ["se_db", "points", "file"];

    /// <summary>The settings with what is asked; as they were where something is wrong, which is then told.</summary>
    public static CampaignSettings Read(KeyReader keys, CampaignSettings settings)
    {
        double? constant = keys.Number("se_db", Requirement.LeastDb, Requirement.MostDb);
        ImmutableArray<(double Hertz, double Db)>? points = keys.Pairs("points");
        string? file = keys.Text("file");
        int stated = Statements.Count(keys.Has);
        if (stated > 1)
        {
            keys.Refuse(Statements.Last(keys.Has), "the requirement is stated in more than one way",
                "keep one of se_db, points and file");
            return settings;
        }

        if (stated == 0)
        {
            keys.Require("se_db");
        }

        return constant is { } se ? settings with { Plan = settings.Plan with { Requirement = Requirement.Constant(new(se)) } }
            : points is { } line
                ? FromPoints([.. line.Select(p => new StatedPoint(p.Hertz, p.Db, keys.LineOf("points")))], keys, settings)
            : file is not null ? FromFile(file, keys, settings) : settings;
    }

    private static CampaignSettings FromPoints(
        ImmutableArray<StatedPoint> points, KeyReader keys, CampaignSettings settings) => settings with
        {
            Plan = settings.Plan with { Requirement = RequirementLine.Of(points, keys.Faults) },
            RequirementAt = (CampaignFolder.SettingsName, keys.LineOf("points")),
        };

    /// <summary>
    /// A line that asks for nothing in the band that the sweeps share: most often its frequencies were typed in another unit.
    /// </summary>
    public static IEnumerable<ReadFault> Outside(CampaignSettings settings, ImmutableArray<Sweep> sweeps)
    {
        if (settings.RequirementAt is not { } place || settings.Plan.Requirement?.Stretch is not { } asked
            || SharedBand.Of(settings, sweeps) is not { } band
            || band.Meets(asked.Start.Value, asked.Stop.Value))
        {
            return [];
        }

        string? power = band.MissingPower(asked.Start.Value, asked.Stop.Value);
        return
        [
            new ReadFault(place.File, place.Line,
                FormattableString.Invariant($"the requirement asks from {asked.Start.Value:R} to {asked.Stop.Value:R} Hz, and ")
                    + FormattableString.Invariant($"the analysed band is {band.Low:R} to {band.High:R} Hz"),
                power is null ? "take the sweeps over the band of the requirement, widen [band], or correct the frequencies (Hz)"
                    : FormattableString.Invariant($"frequencies are in Hz: did you mean {asked.Start.Value:R}{power}?")),
        ];
    }

    private static CampaignSettings FromFile(string file, KeyReader keys, CampaignSettings settings)
    {
        string root = keys.Root;
        if (CampaignPath.Absolute(root, file) is { } relative)
        {
            keys.Refuse("file", $"'{file}' is an absolute path", $"write the path relative to campaign.toml: {relative}");
            return settings;
        }

        string path = Path.GetFullPath(Path.Combine(root, file));
        bool inside = !Path.IsPathRooted(file)
            && path.StartsWith(Path.TrimEndingDirectorySeparator(root) + Path.DirectorySeparatorChar, StringComparison.Ordinal);
        if (!inside || (File.Exists(path) && !FolderWalk.LiesWithin(root, path)))
        {
            keys.Refuse("file", $"'{file}' leads out of the campaign", "put the limits beside campaign.toml");
            return settings;
        }

        if (!File.Exists(path))
        {
            keys.Refuse("file", $"the limits file '{file}' is not there", "correct its path, relative to campaign.toml");
            return settings;
        }

        var own = new FaultList(Path.GetRelativePath(root, path).Replace('\\', '/'));
        (Requirement? asked, string? hash) = RequirementLine.Read(path, own);
        keys.Faults.AddRange(own.All);
        return settings with
        {
            Plan = settings.Plan with { Requirement = asked },
            RequirementAt = (own.File, null),
            Inputs = hash is null ? settings.Inputs : settings.Inputs.Add(new InputFile(own.File, hash)),
        };
    }
}
