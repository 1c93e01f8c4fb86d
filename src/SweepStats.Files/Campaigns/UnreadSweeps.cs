using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>
/// What the files that could not be read were taken for, so that the analysis can say that sweeps are not missing but unread.
/// </summary>
internal static class UnreadSweeps
{
    public static IEnumerable<UnreadFile> Of(SweepList list, SweepBatch batch)
    {
        foreach (ReadFault fault in list.Unread.Where(f => f.Role is not null))
        {
            string reason = fault.File == CampaignFolder.ManifestName ? $"{fault.File} lists them, and they are not there"
                : FaultDigest.Common(fault);
            yield return new UnreadFile(fault.Place, fault.Role!.Value, reason, fault.Remedy);
        }

        ILookup<string, SweepEntry> entries = list.Entries.Where(e => e.Exclude is null).ToLookup(e => e.File);
        foreach (ReadFault fault in batch.Faults.DistinctBy(f => f.File))
        {
            foreach (IGrouping<SweepRole, SweepEntry> role in entries[fault.File].GroupBy(e => e.Role))
            {
                SpecimenName[] specimens =
                    [.. role.Where(e => e.Specimen is not null).Select(e => new SpecimenName(e.Lot!, e.Specimen!)).Distinct()];
                yield return new UnreadFile(fault.File, role.Key, FaultDigest.Common(fault), fault.Remedy)
                { Specimen = specimens is [var only] ? only : null };
            }
        }
    }
}
