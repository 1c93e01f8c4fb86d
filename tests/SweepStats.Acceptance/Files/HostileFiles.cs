using System.Text;
using SweepStats.Files;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>
/// Files that once made the readers throw, hang or take too much. Whoever brings such a fault back will see it here, or wait for
/// the run to end.
/// </summary>
public sealed class HostileFiles
{
    private const int LongestMessage = 1200;

    private static readonly TraceReadOptions Told =
        new() { FrequencyUnit = FrequencyUnit.Hertz, LevelUnit = LevelUnit.DecibelMilliwatts };

    public static TheoryData<string> Corpus =>
        [.. Directory.GetFiles(Path.Combine(Repository.Root, "fixtures/hostile"))
            .Where(f => !f.EndsWith(".md", StringComparison.Ordinal)).Select(f => Path.GetFileName(f)!)
            .Order(StringComparer.Ordinal)];

    public static TheoryData<string, string> Made => new()
    {
        { "brackets-in-the-header.csv", new string('(', 1 << 20) + ",level_dbm\n1,2\n3,4\n" },
        { "brackets-in-a-remark.csv", "# " + string.Concat(Enumerable.Repeat("( ", 1 << 18)) + "\n1 2\n3 4\n" },
        { "quotes-in-a-line.csv", new string('"', 1 << 20) + "\n1,2\n3,4\n" },
        { "resistances.s2p", "# " + string.Concat(Enumerable.Repeat("R ", 1 << 19)) + "\n1 1 1 1 1 1 1 1 1\n" },
        { "blanks-and-words.csv",
            string.Concat(Enumerable.Repeat(new string(' ', 300) + "word" + new string(' ', 90) + "\n", 2000)) + "1,2\n3,4\n" },
        { "groups.csv", string.Concat(Enumerable.Repeat(string.Concat(Enumerable.Repeat("123.456", 120)) + "\n", 2000)) },
        { "many-columns.csv", string.Join(',', Enumerable.Range(0, 9_999).Select(i => "trace " + (i % 7))) + ",f_hz\n"
            + string.Join(',', Enumerable.Repeat("-50", 9_999)) + ",1\n" },
        { "digits-of-other-scripts.csv", "Date,٣/١٢/2026 12:00:00\nDate: １２ Mar 2026\nfrequency_hz,level_dbm\n1,-2\n3,-4\n" },
        { "many-blocks.csv", string.Concat(Enumerable.Repeat("Trace\n1,2\n3,4\n\n", 60_000)) },
    };

    [Theory]
    [MemberData(nameof(Corpus))]
    public void TheCorpusIsReadOrRefused(string file) =>
    AssertSound(file, File.ReadAllBytes(Path.Combine(Repository.Root, "fixtures/hostile", file)));

    [Theory]
    [MemberData(nameof(Made))]
    public void WhatWouldTakeTheSquareOfItsLengthIsReadOrRefused(string file, string text) =>
    AssertSound(file, Encoding.UTF8.GetBytes(text));

    private static void AssertSound(string file, byte[] bytes)
    {
        int lines = 1 + bytes.Count(b => b is (byte)'\n' or (byte)'\r');
        foreach (TraceReadOptions options in new[] { new TraceReadOptions(), Told, Told with { Columns = ["2"] } })
        {
            TraceReading reading = TraceFile.Look(bytes, file, options);
            Assert.NotEqual(reading.Faults.IsEmpty, reading.Traces.IsEmpty);
            Assert.All(reading.Faults.Concat(reading.Traces.SelectMany(t => t.Doubts)), f => AssertSound(f, lines));
            Assert.All(reading.Assumptions, a => Assert.True(a.Length <= LongestMessage));
            Assert.All(reading.Traces, t => Assert.Equal(t.Axis.Hertz.Length, t.Levels.Length));
            Assert.All(reading.Traces.Where(t => t.Doubts.IsEmpty),
                t => Assert.True(t.Axis.Grid is not null && t.Levels.All(double.IsFinite)));
        }
    }

    private static void AssertSound(ReadFault fault, int lines)
    {
        Assert.True(fault.Problem.Length > 0 && fault.Remedy.Length > 0 && fault.ToString().Length <= LongestMessage);
        Assert.True(fault.Line is null || (fault.Line >= 1 && fault.Line <= lines));
    }
}
