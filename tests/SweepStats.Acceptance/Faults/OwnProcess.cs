using System.Diagnostics;
using SweepStats.Acceptance.Files;

namespace SweepStats.Acceptance.Faults;

/// <summary>The program as a process of its own, as a person starts it who is no administrator of the system.</summary>
internal sealed class OwnProcess : IDisposable
{
    // What lets an administrator write where a folder forbids it.
    private const string Privileges = "--bounding-set=-dac_override,-dac_read_search,-fowner,-chown";

    private readonly Process _process;

    /// <summary>Starts it.</summary>
    /// <param name="path">Folder to look for other programs in before all others; null for none.</param>
    /// <param name="words">The command line.</param>
    public OwnProcess(string? path, params string[] words)
    {
        string program = Path.Combine(AppContext.BaseDirectory, "sweepstats");
        string[] line = Environment.IsPrivilegedProcess ? ["setpriv", Privileges, program, .. words] : [program, .. words];
        var start = new ProcessStartInfo(line[0], line[1..]) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["PATH"] = path is null ? Environment.GetEnvironmentVariable("PATH") : $"{path}:{Environment.GetEnvironmentVariable("PATH")}";
        _process = Process.Start(start)!;
    }

    /// <summary>The next line of errors and notes; waits for it.</summary>
    public string? NextError() => _process.StandardError.ReadLine();

    /// <summary>Sends a signal, such as INT.</summary>
    public void Signal(string name) => Process.Start("kill", ["-s", name, $"{_process.Id}"])!.WaitForExit();

    /// <summary>Waits for the end.</summary>
    /// <returns>Exit code, and what was said on the way of errors.</returns>
    public (int Code, string Error) End()
    {
        _process.StandardOutput.ReadToEnd();
        string error = _process.StandardError.ReadToEnd();
        _process.WaitForExit();
        return (_process.ExitCode, error);
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill(entireProcessTree: true);
        }

        _process.Dispose();
    }
}
