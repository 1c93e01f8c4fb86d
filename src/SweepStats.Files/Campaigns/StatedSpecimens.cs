using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>A specimen as campaign.toml names it.</summary>
/// <param name="Text">By lot and specimen, or by specimen alone where only one lot has it.</param>
/// <param name="Line">Where it stands.</param>
internal readonly record struct StatedSpecimen(string Text, int Line);

/// <summary>Finds the specimens that campaign.toml names: the yardstick, and those that truly shield nothing.</summary>
internal sealed class StatedSpecimens
{
    private readonly SpecimenName[] _names;
    private readonly List<ReadFault> _faults = [];

    /// <param name="settings">What campaign.toml says.</param>
    /// <param name="sweeps">The sweeps as read.</param>
    public StatedSpecimens(CampaignSettings settings, ImmutableArray<Sweep> sweeps)
    {
        _names = settings.Yardstick is null && settings.ShieldNothing.IsEmpty ? []
            : [.. sweeps.Where(s => s is { Role: SweepRole.Covered, ExcludedBecause: null })
                .Select(SpecimenName.Of).Distinct().Order()];
        Yardstick = settings.Yardstick is { } asked ? Of("the yardstick", asked) : null;
        ShieldNothing = [.. settings.ShieldNothing.Select(s => Of("in shields_nothing,", s)).OfType<SpecimenName>().Distinct()];
    }

    /// <summary>The yardstick; null where none is named, or it cannot be told.</summary>
    public SpecimenName? Yardstick { get; }

    /// <summary>Specimens that were in place and truly shield nothing.</summary>
    public ImmutableArray<SpecimenName> ShieldNothing { get; }

    /// <summary>Why one cannot be told.</summary>
    public ImmutableArray<ReadFault> Faults => [.. _faults];

    private SpecimenName? Of(string what, StatedSpecimen asked)
    {
        SpecimenName[] found = Array.FindAll(_names, n => n.ToString() == asked.Text);
        found = found.Length > 0 ? found : Array.FindAll(_names, n => n.Specimen == asked.Text);
        if (found is [var only])
        {
            return only;
        }

        _faults.Add(Fault(what, asked, found));
        return null;
    }

    private ReadFault Fault(string what, StatedSpecimen asked, SpecimenName[] found)
    {
        if (found.Length > 0)
        {
            return new ReadFault(
                CampaignFolder.SettingsName, asked.Line, $"{what} '{asked.Text}' may be one of {found.Length} specimens",
                $"write its lot too: {List(found)}");
        }

        string[] known = [.. _names.Select(n => asked.Text.Contains('/') ? n.ToString() : n.Specimen)];
        return new ReadFault(CampaignFolder.SettingsName, asked.Line,
            $"{what} '{asked.Text}' is no covered specimen in use{Spelling.Hint(asked.Text, known)}",
            _names.Length == 0 ? "take its sweeps into covered" : $"name one of {List(_names)}");
    }

    private static string List(SpecimenName[] names) => string.Join(", ", names);
}
