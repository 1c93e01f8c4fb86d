namespace SweepStats.Files.Places;

/// <summary>Keeps other runs from exchanging the files of a folder at the same time.</summary>
internal static class FolderHold
{
    private static readonly TimeSpan BetweenTries = TimeSpan.FromMilliseconds(50);

    /// <summary>Waits until no other run holds a folder, and holds it until the answer is disposed.</summary>
    /// <returns>Null where the system cannot.</returns>
    /// <param name="folder">The folder.</param>
    /// <param name="waits">Called once where another run holds it.</param>
    public static IDisposable? Of(string folder, Action waits)
    {
        if (UnixCalls.Open(folder) is not { } handle)
        {
            return null;
        }

        bool told = false;
        // Asked for again and again instead of once for long: within a call of the system no signal is heard.
        for (bool? held = UnixCalls.TryHold(handle); held != true; held = UnixCalls.TryHold(handle))
        {
            if (held is null)
            {
                handle.Dispose();
                return null;
            }

            if (!told)
            {
                told = true;
                waits();
            }

            Thread.Sleep(BetweenTries);
        }

        return handle;
    }
}
