using SweepStats.Files.Traces;

namespace SweepStats.Files.Campaigns;

/// <summary>What campaign.toml says of some files by themselves.</summary>
/// <param name="Match">Which files, as written.</param>
/// <param name="Line">Line of its heading, from 1.</param>
/// <param name="Said">Their columns and units.</param>
internal sealed record FileStatement(string Match, int Line, TraceReadOptions Said)
{
    private readonly PathPattern _pattern = PathPattern.Of(Match);

    /// <summary>Whether it holds for a file, where none before does.</summary>
    public bool Matches(string file) => _pattern.Matches(file);
}
