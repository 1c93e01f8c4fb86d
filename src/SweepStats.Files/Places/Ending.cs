namespace SweepStats.Files.Places;

/// <summary>That a signal ends the run: all that is to be tidied up then, and what begins after it never begins.</summary>
/// <remarks>
/// Between the signal and the end the run's own threads go on, and may be about to make something new that nobody would tidy up.
/// </remarks>
internal sealed class Ending
{
    private readonly Lock _turn = new();
    private readonly List<Interruption> _live = [];
    private bool _begun;

    /// <summary>That of this program.</summary>
    public static Ending OfTheRun { get; } = new();

    /// <summary>Takes note of something to be tidied up.</summary>
    /// <returns>Whether a signal has come already.</returns>
    public bool Add(Interruption interruption)
    {
        lock (_turn)
        {
            _live.Add(interruption);
            return _begun;
        }
    }

    /// <summary>Forgets it.</summary>
    public void Remove(Interruption interruption)
    {
        lock (_turn)
        {
            _live.Remove(interruption);
        }
    }

    /// <summary>What a signal does. Called from outside the run's own threads, at any time.</summary>
    public void Begin()
    {
        Interruption[] live;
        lock (_turn)
        {
            _begun = true;
            live = [.. _live];
        }

        Array.ForEach(live, interruption => interruption.End());
    }
}
