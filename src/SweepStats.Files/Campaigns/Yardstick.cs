using System.Collections.Immutable;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>
/// Finds the specimen that campaign.toml names as yardstick: by lot and specimen, or by specimen alone where only one lot has it.
/// </summary>
internal static class Yardstick
{
    /// <summary>The specimen; null where none is named, or with the reason why it cannot be told.</summary>
    public static (SpecimenName? Name, ImmutableArray<ReadFault> Faults) Of(CampaignSettings settings,
        ImmutableArray<Sweep> sweeps)
    {
        if (settings.Yardstick is not { } asked)
        {
            return (null, []);
        }

        SpecimenName[] names = [.. sweeps.Where(s => s is { Role: SweepRole.Covered, ExcludedBecause: null })
            .Select(s => new SpecimenName(s.Lot!, s.Specimen!)).Distinct().Order()];
        SpecimenName[] found = Array.FindAll(names, n => n.ToString() == asked.Text);
        found = found.Length > 0 ? found : Array.FindAll(names, n => n.Specimen == asked.Text);
        return found is [var only] ? (only, []) : (null, [Fault(asked.Text, asked.Line, names, found)]);
    }

    private static ReadFault Fault(string text, int line, SpecimenName[] names, SpecimenName[] found)
    {
        if (found.Length > 0)
        {
            return new ReadFault(
                CampaignFolder.SettingsName, line, $"the yardstick '{text}' may be one of {found.Length} specimens",
                $"write its lot too: {List(found)}");
        }

        string[] known = [.. names.Select(n => text.Contains('/') ? n.ToString() : n.Specimen)];
        return new ReadFault(
            CampaignFolder.SettingsName, line,
            $"the yardstick '{text}' is no covered specimen in use{Spelling.Hint(text, known)}",
            names.Length == 0 ? "take its sweeps into covered" : $"name one of {List(names)}");
    }

    private static string List(SpecimenName[] names) => string.Join(", ", names);
}
