using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>
/// Finds folders below covered that hold sweeps both loose and in folders of their own. The loose ones would count as one more
/// placement, or the folder as specimen and lot at once, and nobody would be told.
/// </summary>
internal static class LooseSweeps
{
    private const int DepthOfLotOrSpecimen = 2;

    public static IEnumerable<ReadFault> Among(ImmutableArray<SweepEntry> entries)
    {
        Dictionary<string, int> sweeps = entries.Where(e => e.Specimen is not null)
            .GroupBy(e => e.File[..e.File.LastIndexOf('/')]).ToDictionary(folder => folder.Key, folder => folder.Count());
        ILookup<string, string> inner = sweeps.Keys.SelectMany(folder => Above(folder).Where(sweeps.ContainsKey)
            .Select(above => (Above: above, Folder: folder[(above.Length + 1)..].Split('/')[0])))
            .ToLookup(pair => pair.Above, pair => pair.Folder);
        return inner.OrderBy(g => g.Key, NaturalOrder.Instance)
            .Select(g => Fault(g.Key, sweeps[g.Key], [.. g.Distinct()]));
    }

    private static IEnumerable<string> Above(string folder)
    {
        for (int end = folder.LastIndexOf('/'); end > 0; end = folder.LastIndexOf('/', end - 1))
        {
            yield return folder[..end];
        }
    }

    private static ReadFault Fault(string folder, int loose, string[] inner)
    {
        string sweeps = loose == 1 ? "a sweep file lies" : FormattableString.Invariant($"{loose} sweep files lie");
        string beside = inner.Length == 1 ? $"the folder '{inner[0]}'"
            : FormattableString.Invariant(
                $"'{inner[0]}' and {inner.Length - 1} more {(inner.Length == 2 ? "folder" : "folders")}");
        return folder.Split('/').Length == DepthOfLotOrSpecimen
            ? new ReadFault(folder, null, $"{sweeps} loose beside {beside}, so the folder is a specimen and a lot at once",
                $"put all into covered/<lot>/{folder.Split('/')[1]}/<placement>/: a folder right under covered that holds "
                    + "folders is read as a lot")
            : new ReadFault(folder, null, $"{sweeps} loose beside {beside} and would silently count as one more placement",
                "name a placement there too, or move what lies loose");
    }
}
