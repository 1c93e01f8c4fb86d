using System.Globalization;
using SweepStats.Cli.Look;
using SweepStats.Files;
using SweepStats.Files.Proposals;
using SweepStats.Sweeps;

namespace SweepStats.Cli.Init;

/// <summary>What init guessed of a folder, on one screen.</summary>
/// <param name="proposal">The guesses.</param>
/// <param name="manifest">sweeps.csv as it was written.</param>
internal sealed class ProposalText(FolderProposal proposal, ProposedManifest manifest)
{
    private const int MostDoubtful = 6;
    private const int MostRows = 10;
    private const int MostFaults = 3;
    private const int LongestName = 28;
    private const int LongestReason = 100;

    private readonly ProposedSweep[] _sweeps = [.. proposal.Sweeps];
    private readonly ProposedSweep[] _doubtful = [.. proposal.Doubtful];

    /// <summary>The lines.</summary>
    /// <param name="folder">The folder, as it was named.</param>
    public IEnumerable<string> Lines(string folder) =>
    [
        Counts(folder),
        .. Table(),
        .. LeftOut(),
        .. Missing(),
        .. Next(folder),
    ];

    private string Counts(string folder)
    {
        string[] roles = [.. Enum.GetValues<SweepRole>().Select(r => (Role: r, Count: _sweeps.Count(s => s.Role == r)))
            .Where(r => r.Count > 0).Select(r => $"{Number(r.Count)} {Word(r.Role)}")];
        int open = _sweeps.Count(s => s.Role is null);
        string all = string.Join(", ", open > 0 ? [.. roles, $"{Number(open)} of no known role"] : roles);
        return $"{PrintedText.Of(folder)}: {Plural(_sweeps.Length, "sweep")} in "
            + $"{Plural(_sweeps.Select(s => s.File).Distinct().Count(), "file")}{(all.Length > 0 ? ": " + all : "")}. Nothing "
            + "was moved.";
    }

    private IEnumerable<string> Table()
    {
        ProposedSweep[] open = [.. _doubtful.Take(MostDoubtful)];
        ProposedSweep[] shown = [.. open, .. Examples(MostRows - open.Length)];
        string[][] rows = [["line", "role", "lot", "specimen", "placement", "file", "why"], .. shown.Select(Row)];
        int[] widths = [.. Enumerable.Range(0, rows[0].Length).Select(c => rows.Max(r => r[c].Length))];
        foreach (string[] row in shown.Length == 0 ? [] : rows)
        {
            yield return "  "
                + string.Join("  ", row.Select((cell, c) => c == row.Length - 1 ? cell : cell.PadRight(widths[c]))).TrimEnd();
        }

        if (_sweeps.Length > shown.Length)
        {
            yield return $"  and {Number(_sweeps.Length - shown.Length)} more: all rows, each with its reasons above it, are in "
                + "sweeps.csv";
        }
    }

    // Of each role one, then of each specimen and placement.
    private IEnumerable<ProposedSweep> Examples(int most)
    {
        ProposedSweep[] plain = [.. _sweeps.Where(s => s.ToFillIn.IsEmpty)];
        return plain.DistinctBy(s => s.Role).Concat(plain.DistinctBy(Kind)).Distinct().Take(most).OrderBy(manifest.LineOf);
    }

    // One row shows what others of its specimen and placement are guessed by.
    private static string Kind(ProposedSweep sweep) => $"{sweep.Role}|{sweep.Lot}|{sweep.Specimen}|{sweep.Placement}";

    private string[] Row(ProposedSweep sweep)
    {
        string file = sweep.Column is { } column ? $"{sweep.File} [{column}]" : sweep.File;
        // The last reason is that of the time.
        string why = string.Join("; ", sweep.ToFillIn.IsEmpty ? sweep.Reasons.RemoveAt(sweep.Reasons.Length - 1)
            : sweep.ToFillIn.Select(f => $"{ProposedManifest.FillIn} {f}"));
        return
        [
            Number(manifest.LineOf(sweep)),
            sweep.Role is { } role ? Word(role) : "?",
            PrintedText.Short(sweep.Lot ?? "", LongestName),
            sweep.Specimen is { } specimen && sweep.Role is null or SweepRole.Covered ? PrintedText.Short(specimen, LongestName)
                : sweep.Role == SweepRole.Covered ? "?" : "",
            PrintedText.Short(sweep.Placement ?? "", LongestName),
            PrintedText.Short(file, LongestName),
            PrintedText.Short(why, LongestReason),
        ];
    }

    private IEnumerable<string> LeftOut()
    {
        string[] faults = [.. FaultDigest.Of(proposal.LeftOut)];
        foreach (string fault in faults.Take(MostFaults))
        {
            yield return "Not read: " + PrintedText.Of(fault);
        }

        if (faults.Length > MostFaults)
        {
            yield return $"and {Plural(faults.Length - MostFaults, "more reason")}, in sweeps.csv";
        }

        if (!proposal.TracesLeftOut.IsEmpty)
        {
            yield return $"{Plural(proposal.TracesLeftOut.Length, "trace")} beside the sweeps "
                + $"{(proposal.TracesLeftOut.Length == 1 ? "is" : "are")} not read, such as "
                + $"{PrintedText.Of(proposal.TracesLeftOut[0])}.";
        }

        if (proposal.OtherFiles > 0)
        {
            yield return $"{Plural(proposal.OtherFiles, "file")} of other kinds {(proposal.OtherFiles == 1 ? "was" : "were")} "
                + "not looked at.";
        }
    }

    private IEnumerable<string> Missing()
    {
        SweepRole[] needed = [SweepRole.Floor, SweepRole.Reference, SweepRole.Covered];
        IEnumerable<string> missing = needed.Where(r => _sweeps.All(s => s.Role != r)).Select(Missing);
        return Units() is { } units ? missing.Append(units) : missing;
    }

    private string Missing(SweepRole role)
    {
        int open = _sweeps.Count(s => s.Role is null);
        return open > 0
            ? $"No {Word(role)} sweep is named yet: {Plural(open, "sweep")} still {(open == 1 ? "needs" : "need")} a role."
            : proposal.Rows.All(r => r.Faults.IsEmpty)
            ? $"No {Word(role)} sweep was found: correct a row, or take such sweeps."
            : $"No {Word(role)} sweep was read: see the rows marked NOT READ in sweeps.csv; take their # away once "
                + "campaign.toml settles them.";
    }

    private string? Units()
    {
        string[] keys =
            [.. new[] { proposal.WithoutFrequencyUnit.IsEmpty ? null : "frequency_unit",
                proposal.WithoutLevelUnit.IsEmpty ? null : "level_unit" }.OfType<string>()];
        int files = proposal.WithoutFrequencyUnit.Union(proposal.WithoutLevelUnit).Count();
        return keys.Length == 0 ? null : $"{Plural(files, "file")} {(files == 1 ? "does" : "do")} not say "
            + $"{(keys.Length == 1 ? "a unit" : "their units")}: set {string.Join(" and ", keys)} under [setup] in "
            + "campaign.toml.";
    }

    private IEnumerable<string> Next(string folder)
    {
        yield return _doubtful.Length == 0 ? "Look through sweeps.csv and correct what is guessed wrong."
            : $"Fill in sweeps.csv: {Plural(_doubtful.Length, "row")}, marked {ProposedManifest.FillIn} there. Correct what "
                + "else is guessed wrong.";
        yield return $"Then: sweepstats check {ShellWord.Of(folder)}";
    }

    private static string Word(SweepRole role) => role.ToString().ToLowerInvariant();

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Plural(int count, string noun) => $"{Number(count)} {noun}{(count == 1 ? "" : "s")}";
}
