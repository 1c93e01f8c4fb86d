using System.Text;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Traces;

namespace SweepStats.Acceptance.Files;

/// <summary>A folder that lives as long as a test.</summary>
internal sealed class ScratchFolder : IDisposable
{
    public ScratchFolder() => Directory.CreateDirectory(Path);

    public string Path { get; } =
        System.IO.Path.Combine(System.IO.Path.GetTempPath(), "sweepstats-" + Guid.NewGuid().ToString("N"));

    /// <summary>Writes a text file, folders included.</summary>
    public ScratchFolder With(string file, string text) => With(file, new UTF8Encoding(false).GetBytes(text));

    public ScratchFolder With(string file, byte[] bytes)
    {
        string full = System.IO.Path.Combine(Path, file);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(full)!);
        File.WriteAllBytes(full, bytes);
        return this;
    }

    /// <summary>A reference and a covered sweep, so that nothing but the tested file is missing.</summary>
    public ScratchFolder WithUsualSweeps() => With("reference/r1.csv", Traces.Plain).With("covered/A/A1/c1.csv", Traces.Plain);

    public CampaignReading Read(bool keepGoing = false, int threads = 1) =>
        CampaignFolder.Read(Path, new CampaignReadOptions(keepGoing, threads), null);

    public TraceReading Trace(string file, TraceReadOptions? options = null) =>
        TraceFile.Read(System.IO.Path.Combine(Path, file), file, options ?? new TraceReadOptions());

    public void Dispose() => Directory.Delete(Path, recursive: true);

    internal static class Traces
    {
        public const string Plain = "frequency_hz,level_dbm\n30000000,-40.5\n40000000,-41\n50000000,-42.25\n";
    }
}
