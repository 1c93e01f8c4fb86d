using SweepStats.Files;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Traces;

namespace SweepStats.Cli.Look;

/// <summary>
/// The lines of campaign.toml by which a campaign reads a file as it was read here, or that settle why it was not read.
/// </summary>
internal static class PasteLines
{
    /// <summary>The lines with a heading; none where nothing was stated and nothing that could be stated is asked.</summary>
    /// <param name="file">The file.</param>
    /// <param name="refusal">Why a campaign refuses it; empty where it does not.</param>
    /// <param name="said">What was stated.</param>
    public static IEnumerable<string> Of(string file, ImmutableArray<ReadFault> refusal, TraceReadOptions said)
    {
        ImmutableArray<string> asked = FilesLines.ToFillIn(FilesLines.PatternOf(file), refusal, said);
        bool stated = said.FrequencyUnit is not null || said.LevelUnit is not null || said.FrequencyColumn is not null
            || said.RealColumn is not null || !said.Columns.IsEmpty;
        return !asked.IsEmpty ? ["To settle it, fill in and put into campaign.toml:", .. asked.Select(Line)]
            : refusal.IsEmpty && stated
            ? ["So that a campaign reads it so, put into campaign.toml:", .. FilesLines.Of(file, said).Select(Line)]
            : [];
    }

    private static string Line(string text) => "  " + PrintedText.Of(text);
}
