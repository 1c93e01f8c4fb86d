using System.Runtime.InteropServices;

namespace SweepStats.Files.Places;

/// <summary>Tidies up before a signal ends the run: Ctrl-C, a shell that closes, a system that shuts down.</summary>
/// <remarks>
/// What may not be half done is a step. A signal waits for the end of a step, and tidies up after it;
/// no step comes after a signal, and none of one that begins after it.
/// So a step must be short: whoever waits for somebody else does so between two.
/// </remarks>
public sealed class Interruption : IDisposable
{
    private static readonly PosixSignal[] Ends =
        [PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP, PosixSignal.SIGQUIT];

    private readonly Lock _stepping = new();
    private readonly Action _tidy;
    private readonly Ending _end;
    private readonly PosixSignalRegistration[] _watched;
    private volatile bool _ending;

    /// <param name="tidy">What is done first; a second signal asks for it again. The run then ends as it would have.</param>
    public Interruption(Action tidy)
        : this(tidy, Ending.OfTheRun)
    {
    }

    /// <summary>The same within an end of its own, for tests.</summary>
    internal Interruption(Action tidy, Ending end)
    {
        (_tidy, _end) = (tidy, end);
        _watched = [.. Ends.Select(signal => PosixSignalRegistration.Create(signal, _ => end.Begin()))];
        // A signal may have come in between, and has said so itself.
        if (end.Add(this))
        {
            _ending = true;
        }
    }

    /// <summary>Takes a step; never returns once a signal has come, for the run is about to end.</summary>
    public void Step(Action step) => Step(this, this, step);

    /// <summary>Waits for ever once a signal has come: what the run still wrote would be left behind.</summary>
    public void StopIfEnding()
    {
        if (_ending)
        {
            Thread.Sleep(Timeout.Infinite);
        }
    }

    /// <summary>Leaves signals to the system again.</summary>
    public void Dispose()
    {
        _end.Remove(this);
        foreach (PosixSignalRegistration signal in _watched)
        {
            signal.Dispose();
        }
    }

    /// <summary>Takes a step that two are to wait for.</summary>
    internal static void Step(Interruption one, Interruption other, Action step)
    {
        ArgumentNullException.ThrowIfNull(step);
        lock (one._stepping)
        {
            lock (other._stepping)
            {
                if (!one._ending && !other._ending)
                {
                    step();
                    return;
                }
            }
        }

        // Without the locks, which the signal may still have to take.
        Thread.Sleep(Timeout.Infinite);
    }

    /// <summary>What a signal does. Called from outside the run's own threads, at any time.</summary>
    internal void End()
    {
        _ending = true;
        lock (_stepping)
        {
            try
            {
                _tidy();
            }
            catch (Exception)
            {
                // Thrown here, whatever it is, it would end the run with a trace instead of as the signal does. What is left, the
                // next run sweeps.
            }
        }
    }
}
