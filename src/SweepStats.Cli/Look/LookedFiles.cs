using SweepStats.Files;
using SweepStats.Files.Traces;

namespace SweepStats.Cli.Look;

/// <summary>The files of one call, read one after the other.</summary>
/// <param name="paths">As the user named them.</param>
/// <param name="known">What the user states about them.</param>
/// <param name="values">Takes every reading besides; null where that is not asked for.</param>
internal sealed class LookedFiles(string[] paths, TraceReadOptions known, ValuesFile? values)
{
    /// <summary>Reads each file and shows it, or what keeps it from being read.</summary>
    /// <returns>The exit code.</returns>
    public int Show(Action<string, SeenFile> show, Action<string, TraceReading> refuse)
    {
        // One file after the other, each let go before the next is opened: two big ones need not fit into memory together.
        int code = ExitCode.Done;
        foreach (string path in paths)
        {
            code = IsUsable(path, show, refuse) ? code : ExitCode.BadInput;
        }

        return code;
    }

    // A file of which a campaign takes no sweep is shown all the same: what is wrong with it is then seen.
    private bool IsUsable(string path, Action<string, SeenFile> show, Action<string, TraceReading> refuse)
    {
        string file = Path.DirectorySeparatorChar == '/' ? path : path.Replace(Path.DirectorySeparatorChar, '/');
        TraceReading reading = Directory.Exists(path) ? Folder(file) : TraceFile.Look(path, file, known);
        if (!reading.Faults.IsEmpty)
        {
            values?.Refuse(file, reading);
            refuse(file, reading);
            return false;
        }

        var seen = new SeenFile(reading, TraceFile.Taken(reading, file, known).Faults);
        values?.Add(file, seen);
        show(file, seen);
        return seen.Refusal.IsEmpty;
    }

    private static TraceReading Folder(string name) =>
        new()
        {
            Faults =
            [new ReadFault(name, null, "this is a folder", $"name files, e.g. {ShellWord.Of(name.TrimEnd('/'))}/*.csv")],
        };
}
