using System.Collections.Concurrent;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Places;
using SweepStats.Sweeps;

namespace SweepStats.Files.Results;

/// <summary>
/// A report folder that appears whole or not at all: files are gathered beside the target and put in its place at the end.
/// </summary>
/// <remarks>
/// An earlier report at the target is replaced: a folder with a summary.json of this program and nothing but the files it lists,
/// unchanged. Any other folder or file is not touched.
/// </remarks>
public sealed class ReportFolder : IDisposable
{
    private const string Elsewhere = "choose another folder with --out";

    private readonly GatheredFolder _folder;
    private readonly ConcurrentDictionary<string, string> _written = new(StringComparer.Ordinal);

    /// <summary>Starts a report.</summary>
    /// <param name="target">Where it will be.</param>
    /// <exception cref="InvalidOperationException">The target may not be replaced; see <see cref="Refusal(string)"/>.</exception>
    /// <exception cref="IOException">The folder beside the target cannot be made.</exception>
    public ReportFolder(string target)
    {
        if (Refusal(target) is { } fault)
        {
            throw new InvalidOperationException(fault.ToString());
        }

        _folder = new GatheredFolder(target, new Predecessor
        {
            What = "the report",
            Elsewhere = Elsewhere,
            Objection = folder => EarlierReport.Objection(folder, target),
            Own = EarlierReport.Own,
            Remove = EarlierReport.Remove,
            Mark = SummaryJson.FileName,
        });
    }

    /// <summary>Why a report may not be written to a place; null where it may.</summary>
    public static ReadFault? Refusal(string target)
    {
        string full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(target));
        if (Path.GetDirectoryName(full) is null)
        {
            return new ReadFault(target, null, "a report cannot take the place of a whole drive", "choose a folder with --out");
        }

        if (LostLink.Of(target, Elsewhere) is { } lost)
        {
            return lost;
        }

        if (File.Exists(full))
        {
            return new ReadFault(target, null, "there is a file of this name", Elsewhere);
        }

        return Directory.Exists(full) ? EarlierReport.Objection(full, target) : null;
    }

    /// <summary>
    /// Why a report may not be written to a place, where it is not to lie among the sweeps of campaigns either; null where it
    /// may.
    /// </summary>
    /// <param name="target">The place.</param>
    /// <param name="campaigns">Folders of campaigns.</param>
    public static ReadFault? Refusal(string target, IEnumerable<string> campaigns)
    {
        ArgumentNullException.ThrowIfNull(campaigns);
        return campaigns.Any(campaign => LiesAmongSweeps(target, campaign))
            ? new ReadFault(target, null,
                "the report would lie among the sweeps of the campaign, which could then not be read again", Elsewhere)
            : Refusal(target);
    }

    private static bool LiesAmongSweeps(string target, string campaign)
    {
        if (RealPath.Of(target) is not { } place || RealPath.Of(campaign) is not { } folder)
        {
            return false;
        }

        string inner = folder.TrimEnd(Path.DirectorySeparatorChar) + Path.DirectorySeparatorChar;
        return place.StartsWith(inner, StringComparison.Ordinal)
            && Roles.Parse(place[inner.Length..].Split(Path.DirectorySeparatorChar)[0]) is not null;
    }

    /// <summary>Creates a file of the report; several may be written at the same time.</summary>
    /// <param name="path">Its path within the report, with '/' between folders.</param>
    /// <exception cref="ArgumentException">The path leads out of the report.</exception>
    public Stream Create(string path)
    {
        _folder.StopIfEnding();
        string full = Gathered(path);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        return new HashedFile(full, hash => _written[Path.GetRelativePath(_folder.Stage, full).Replace('\\', '/')] = hash);
    }

    /// <summary>Where a file lies until the report is put in its place.</summary>
    /// <param name="path">Its path within the report, with '/' between folders.</param>
    /// <exception cref="ArgumentException">The path leads out of the report.</exception>
    public string Gathered(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        string full = Path.GetFullPath(Path.Combine(_folder.Stage, path));
        return full.StartsWith(_folder.Stage + Path.DirectorySeparatorChar, StringComparison.Ordinal)
            ? full
            : throw new ArgumentException($"'{path}' leads out of the report.", nameof(path));
    }

    /// <summary>The files created so far, with their hashes, in natural order. All streams must be closed.</summary>
    public ImmutableArray<InputFile> Written() =>
        [.. _written.Select(file => new InputFile(file.Key, file.Value)).OrderBy(f => f.Path, NaturalOrder.Instance)];

    /// <summary>Puts the report in its place. All streams must be closed.</summary>
    /// <param name="waits">Told in a sentence where another run has to end its exchange first.</param>
    /// <exception cref="IOException">The folders cannot be exchanged; the earlier report is then in its place.</exception>
    public void Commit(Action<string>? waits = null) => _folder.Commit(waits);

    /// <summary>Why a file of the report could not be written, as a person who named the folder understands it.</summary>
    /// <param name="e">What the system said.</param>
    public IOException Told(Exception e) => _folder.Told(e);

    /// <summary>Removes what was gathered, unless it was committed.</summary>
    public void Dispose() => _folder.Dispose();
}
