using System.Globalization;
using System.Text;
using SweepStats.Acceptance.Commands;
using SweepStats.Acceptance.Files;

namespace SweepStats.Acceptance.Init;

/// <summary>
/// A folder of trace files as a person keeps it after a day at the bench: invented numbers, a floor at −100 dBm, a reference at
/// −40, specimens between.
/// </summary>
internal sealed class BenchFolder : IDisposable
{
    private const int Points = 21;
    private const double FirstMegahertz = 30;
    private const double StepMegahertz = 25;

    private readonly ScratchFolder _scratch = new();
    private int _sweeps;

    /// <summary>Where it is.</summary>
    public string Path => _scratch.Path;

    public void Dispose() => _scratch.Dispose();

    /// <summary>A sweep in a file of two columns.</summary>
    public BenchFolder Sweep(string file, double level, string head = "Frequency (MHz);Level (dBm)", string above = "") =>
        Text(file, above + head + "\n" + string.Concat(Levels(level)
            .Select((l, i) => string.Create(CultureInfo.InvariantCulture, $"{Megahertz(i)};{l:0.00}\n"))));

    /// <summary>Several sweeps beside each other in one file.</summary>
    public BenchFolder Table(string file, string frequency, params (string Name, double Level)[] columns)
    {
        double[][] levels = [.. columns.Select(c => Levels(c.Level))];
        var text = new StringBuilder(string.Join(',', columns.Select(c => c.Name).Prepend(frequency)) + "\n");
        for (int i = 0; i < Points; i++)
        {
            text.AppendJoin(',', levels.Select(l => l[i]).Prepend(Megahertz(i) * 1e6)
                .Select(v => v.ToString("0.00", CultureInfo.InvariantCulture))).Append('\n');
        }

        return Text(file, text.ToString());
    }

    /// <summary>A two-port file whose S21 is the sweep.</summary>
    public BenchFolder TwoPort(string file, double level) => Text(
        file, "! invented\n# MHz S DB R 50\n" + string.Concat(Levels(level)
            .Select((l, i) => string.Create(CultureInfo.InvariantCulture,
                $"{Megahertz(i)} -10.{i:00} 5 {l:0.00} 10 {l:0.00} 10 -12.{i:00} 7\n"))));

    public BenchFolder Text(string file, string text)
    {
        _scratch.With(file, text);
        return this;
    }

    public (int Code, string Out, string Error) Init() => Shell.Run("init", Path);

    /// <summary>The next command; it ran where it said nothing of bad input.</summary>
    public (int Code, string Out, string Error) Check() => Shell.Run("check", Path);

    public string Read(string file) => File.ReadAllText(System.IO.Path.Combine(Path, file));

    /// <summary>The rows of sweeps.csv without remarks, without the empty cells at their end.</summary>
    public string[] Rows() =>
        [.. Read("sweeps.csv").Split('\n').Skip(1).Where(l => l.Length > 0 && l[0] != '#').Select(l => l.TrimEnd(','))];

    /// <summary>What a person does: writes cells into rows. The number of rows that changed.</summary>
    /// <param name="edit">The new row for an old one.</param>
    public int Edit(Func<string, string> edit) => Edit("sweeps.csv", edit);

    public int Edit(string file, Func<string, string> edit)
    {
        string[] before = Read(file).Split('\n');
        string[] after = [.. before.Select(edit)];
        Text(file, string.Join('\n', after));
        return before.Zip(after).Count(p => p.First != p.Second);
    }

    private static double Megahertz(int point) => FirstMegahertz + (StepMegahertz * point);

    // Scatter of some tenths of a dB that no two sweeps share, the same on every run.
    private double[] Levels(double level)
    {
        int sweep = _sweeps++;
        return [.. Enumerable.Range(0, Points)
            .Select(i => level - (0.1 * i) + (0.4 * Math.Sin((7.3 * i * i) + (3.1 * sweep) + (1.7 * i * sweep))))];
    }
}
