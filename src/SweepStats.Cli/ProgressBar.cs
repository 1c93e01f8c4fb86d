using System.Diagnostics;
using System.Globalization;

namespace SweepStats.Cli;

/// <summary>A bar on the error stream for work longer than half a second; nothing where nobody watches.</summary>
internal sealed class ProgressBar(Terminal terminal, bool wanted) : IDisposable
{
    private const int Width = 30;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(0.4);
    private static readonly TimeSpan Between = TimeSpan.FromMilliseconds(100);

    private readonly Lock _turn = new();
    private readonly Stopwatch _clock = Stopwatch.StartNew();
    private TimeSpan _next = Patience;
    private bool _shown;

    /// <summary>The stretch of the bar that one stage moves over.</summary>
    public IProgress<double> Part(string what, double from, double to) =>
        new Stage(share => Show(what, from + ((to - from) * share)));

    /// <summary>Wipes the bar off the line.</summary>
    public void Clear()
    {
        lock (_turn)
        {
            if (_shown)
            {
                terminal.Error.Write("\r" + new string(' ', Width + 30) + "\r");
                _shown = false;
            }
        }
    }

    /// <summary>Wipes the bar off the line.</summary>
    public void Dispose() => Clear();

    private void Show(string what, double share)
    {
        if (!wanted || !terminal.Interactive || _clock.Elapsed < _next)
        {
            return;
        }

        lock (_turn)
        {
            int full = (int)Math.Round(Width * Math.Clamp(share, 0, 1));
            terminal.Error.Write(string.Create(CultureInfo.InvariantCulture,
                $"\r{what,-10} {new string('=', full)}{new string('.', Width - full)} {share * 100,3:0} %"));
            _shown = true;
            _next = _clock.Elapsed + Between;
        }
    }

    // Reports on the calling thread: the runtime's own would queue them past the end of the work.
    private sealed class Stage(Action<double> show) : IProgress<double>
    {
        /// <summary>Hands on the share of the stage that is done, at once and on the caller's thread.</summary>
        public void Report(double value) => show(value);
    }
}
