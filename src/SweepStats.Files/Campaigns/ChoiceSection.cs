using SweepStats.Choice;

namespace SweepStats.Files.Campaigns;

/// <summary>
/// The section [choice] of campaign.toml: a yardstick, and columns of sweeps.csv that hold properties of the specimens.
/// </summary>
internal sealed class ChoiceSection
{
    private readonly List<PropertyColumn> _columns = [];
    private readonly KeyReader _keys;

    private ChoiceSection(KeyReader keys) => _keys = keys;

    public static CampaignSettings Read(KeyReader keys, CampaignSettings settings)
    {
        var section = new ChoiceSection(keys);
        return settings with
        {
            Yardstick = keys.Text("yardstick") is { } text ? new StatedSpecimen(text, keys.LineOf("yardstick")) : null,

            // But for its yardstick: which specimen that is, only the sweeps tell.
            Plan = settings.Plan with
            {
                Choice = new ChoiceQuestion
                {
                    LowerIsBetter = section.Names("lower_is_better", isWeighed: true),
                    HigherIsBetter = section.Names("higher_is_better", isWeighed: true),
                    Shown = section.Names("shown", isWeighed: false),
                },
            },
            PropertyColumns = [.. section._columns],
        };
    }

    private ImmutableArray<string> Names(string key, bool isWeighed)
    {
        var names = ImmutableArray.CreateBuilder<string>();
        foreach ((string name, int line) in _keys.Texts(key) ?? [])
        {
            var column = new PropertyColumn(name, line, isWeighed);
            if (NameRule.Problem(name) is { } problem)
            {
                _keys.Refuse(line, $"the name of a column in choice.{key} {problem}", "shorten or correct it");
            }
            else if (ManifestColumns.Known.Contains(column.Key))
            {
                _keys.Refuse(line, $"the column '{name}' of {CampaignFolder.ManifestName} has a meaning of its own and is no "
                    + "property", "name a column of your own");
            }
            else if (_columns.Any(c => c.Key == column.Key))
            {
                _keys.Refuse(line, $"the column '{name}' is named twice under [choice]",
                    "keep it once, in one of lower_is_better, higher_is_better and shown");
            }
            else
            {
                _columns.Add(column);
                names.Add(name);
            }
        }

        return names.ToImmutable();
    }
}
