using System.Globalization;
using System.Text;
using System.Text.Json;
using SweepStats.Acceptance.Files;
using SweepStats.Cli;

namespace SweepStats.Acceptance.Commands;

/// <summary>Invented trace files, and sweepstats look at them.</summary>
internal sealed class LookFolder : IDisposable
{
    public const string Ramp = "frequency_hz,level_dbm\n30000000,-100\n40000000,-90\n50000000,-80\n";

    private readonly ScratchFolder _scratch = new();

    public LookFolder With(string file, string text)
    {
        _scratch.With(file, text);
        return this;
    }

    public string Path(string file) => System.IO.Path.Combine(_scratch.Path, file);

    public (int Code, string Out, string Error) Look(string file, params string[] options) =>
        Shell.Run(["look", Path(file), .. options]);

    public JsonElement Json(params string[] files) =>
        JsonDocument.Parse(Shell.Run(["look", "--format", "json", .. files.Select(Path)]).Out).RootElement;

    /// <summary>The lines below the name of the trace: its picture.</summary>
    public static string[] Picture(string output, string trace) =>
        [.. output.ReplaceLineEndings("\n").Split('\n').SkipWhile(line => line != "  " + trace).Skip(1)
            .TakeWhile(line => line.Length > 0)];

    /// <summary>The same to a terminal that knows nothing but ASCII.</summary>
    public string LookInAscii(string file)
    {
        using var output = new AsciiWriter();
        CommandLine.Run(["look", Path(file)], new Terminal(output, TextWriter.Null, Interactive: false));
        return output.ToString();
    }

    public void Dispose() => _scratch.Dispose();

    private sealed class AsciiWriter() : StringWriter(CultureInfo.InvariantCulture)
    {
        public override Encoding Encoding => Encoding.ASCII;
    }
}
