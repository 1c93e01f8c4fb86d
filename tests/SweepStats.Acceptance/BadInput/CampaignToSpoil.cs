using System.Text;

namespace SweepStats.Acceptance.BadInput;

/// <summary>A small campaign without a fault, in a folder that lives as long as a test.</summary>
internal sealed class CampaignToSpoil : IDisposable
{
    private const string Good = "frequency_hz,level_dbm\n30000000,-40.5\n40000000,-41\n50000000,-42.25\n";

    public CampaignToSpoil() => With("floor/f0.csv", Good).With("reference/r1.csv", Good).With("covered/A/A1/c1.csv", Good);

    /// <summary>A folder of its own, the campaign within and room for what lies outside.</summary>
    public string Root { get; } = Path.Combine(Path.GetTempPath(), "sweepstats-" + Guid.NewGuid().ToString("N"));

    public string Folder => Path.Combine(Root, "campaign");

    public string Report => Path.Combine(Root, "report");

    public CampaignToSpoil With(string file, string text) => With(file, new UTF8Encoding(false).GetBytes(text));

    public CampaignToSpoil With(string file, byte[] bytes)
    {
        File.WriteAllBytes(Place(file), bytes);
        return this;
    }

    /// <summary>A file of many lines or bytes, written as it comes.</summary>
    public void WithStream(string file, Action<FileStream> write)
    {
        using FileStream stream = File.Create(Place(file));
        write(stream);
    }

    public void WithLink(string file, string target) => File.CreateSymbolicLink(Place(file), target);

    public void Without(string folder) => Directory.Delete(Path.Combine(Folder, folder), recursive: true);

    public void Dispose() => Directory.Delete(Root, recursive: true);

    private string Place(string file)
    {
        string full = Path.GetFullPath(Path.Combine(Folder, file));
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        return full;
    }
}
