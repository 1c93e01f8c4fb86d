using System.Globalization;
using System.Text;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Traces;

namespace SweepStats.Files.Proposals;

/// <summary>campaign.toml as it is proposed: the usual remarks, and what the files of the folder leave open, as remarks to fill
/// in.</summary>
public static class ProposedSettings
{
    private const int MostBlocks = 20;

    /// <summary>The text of the file.</summary>
    /// <param name="template">The usual text.</param>
    /// <param name="proposal">The proposal.</param>
    public static string Of(string template, FolderProposal proposal)
    {
        ArgumentNullException.ThrowIfNull(template);
        ArgumentNullException.ThrowIfNull(proposal);
        string text = Told(template, "# frequency_unit", proposal.WithoutFrequencyUnit);
        text = Told(text, "# level_unit", proposal.WithoutLevelUnit);
        return text + Blocks(proposal);
    }

    // Before the key, where a person looks for it.
    private static string Told(string text, string key, ImmutableArray<string> files)
    {
        if (files.IsEmpty)
        {
            return text;
        }

        int at = text.IndexOf(key, StringComparison.Ordinal);
        string who = files.Length == 1 ? "1 file does" : string.Create(CultureInfo.InvariantCulture, $"{files.Length} files do");
        return text.Insert(at,
            $"## FILL IN: {who} not say it, such as {OneLine(files[0])}. Correct the unit and take the '#' away.\n");
    }

    private static string Blocks(FolderProposal proposal)
    {
        ProposedSweep[] asked = [.. proposal.Rows.Where(r => r.Faults.Any(f => f.Asks != StatableKeys.None))];
        if (asked.Length == 0)
        {
            return "";
        }

        var text = new StringBuilder("\n## FILL IN: which columns these files have. Correct what stands here, take the '#' "
            + "away, and then that before the file's row in sweeps.csv.\n");
        foreach (var alike in asked.GroupBy(r => (Kind: KindOf(r.File),
            What: string.Join('|', r.Faults.Select(f => $"{f.Asks} {f.Candidates}")))).Take(MostBlocks))
        {
            foreach (string line in Patterns(proposal, alike.Key.Kind, [.. alike]).SelectMany(
                p => FilesLines.ToFillIn(p, [.. alike.SelectMany(r => r.Faults)], new TraceReadOptions())))
            {
                text.Append("# ").Append(OneLine(line)).Append('\n');
            }
        }

        return text.ToString();
    }

    // One pattern where it holds these files and no other; else each by its name.
    private static string[] Patterns(FolderProposal proposal, string kind, ProposedSweep[] alike) =>
        proposal.Rows.Count(r => KindOf(r.File) == kind) == alike.Length ? [kind]
            : [.. alike.Select(r => r.File).Distinct().Take(MostBlocks)];

    private static string KindOf(string file) => $"{file[..(file.LastIndexOf('/') + 1)]}*{Path.GetExtension(file)}";

    private static string OneLine(string text) =>
        string.Concat(text.Select(c => char.IsControl(c) || c is '\u2028' or '\u2029' ? ' ' : c));
}
