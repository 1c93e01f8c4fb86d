using System.Diagnostics;

namespace SweepStats.Acceptance.Faults;

/// <summary>The program as a process of its own, as a person starts it who is no administrator of the system.</summary>
internal sealed class OwnProcess : IDisposable
{
    // What lets an administrator write where a folder forbids it.
    private const string Privileges = "--bounding-set=-dac_override,-dac_read_search,-fowner,-chown";

    private readonly Process _process;

    /// <summary>Starts it.</summary>
    /// <param name="words">The command line.</param>
    public OwnProcess(params string[] words)
        : this(new Dictionary<string, string>(), words)
    {
    }

    /// <summary>Starts it in an environment of its own.</summary>
    /// <param name="environment">What its environment has besides.</param>
    /// <param name="words">The command line.</param>
    public OwnProcess(IReadOnlyDictionary<string, string> environment, params string[] words)
    {
        string program = Path.Combine(AppContext.BaseDirectory, "sweepstats");
        string[] line = Environment.IsPrivilegedProcess ? ["setpriv", Privileges, program, .. words] : [program, .. words];
        var start = new ProcessStartInfo(line[0], line[1..]) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach ((string name, string value) in environment)
        {
            start.Environment[name] = value;
        }

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
