using System.Runtime.InteropServices;

namespace SweepStats.Files.Places;

/// <summary>Tidies up before a signal ends the run: Ctrl-C, a shell that closes, a system that shuts down.</summary>
public sealed class Interruption : IDisposable
{
    private static readonly PosixSignal[] Ends = [PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP, PosixSignal.SIGQUIT];

    private readonly PosixSignalRegistration[] _watched;

    /// <param name="tidy">What is done first. The run then ends as it would have without.</param>
    public Interruption(Action tidy) => _watched = [.. Ends.Select(signal => PosixSignalRegistration.Create(signal, _ => tidy()))];

    /// <summary>Leaves signals to the system again.</summary>
    public void Dispose()
    {
        foreach (PosixSignalRegistration signal in _watched)
        {
            signal.Dispose();
        }
    }
}
