using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using SweepStats.Files.Traces;
using SweepStats.Files.Traces.Twins;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>
/// Files that differ from one read before in nothing but the levels are read a shorter way: what comes out is what the long way
/// gives, or says.
/// </summary>
public sealed class TwinFiles
{
    private const int Rows = 120;

    private static readonly string[] Ways =
    [
        "usual", "negative whole", "whole", "signed", "exponents", "long", "not a number", "blank", "all 0", "all -200",
        "far below", "far above", "tiny", "rising", "falling", "counting", "as the frequencies", "one odd", "one whole", "padded",
        "points without decimals", "zero below", "as short as it goes",
    ];

    public static TheoryData<string, string> Heads => new()
    {
        { "plain", "frequency_hz,level_dbm\n" },
        { "spoken", "Frequency (MHz),Level (dBm)\n" },
        { "carriage returns and line feeds", "frequency_hz,level_dbm\r\n" },
        { "carriage returns", "frequency_hz,level_dbm\r" },
        { "semicolons", "Frequenz in MHz;Pegel in dBm\n" },
        { "semicolons and a remark", "# drawn\nf_hz;level_dbuv\n" },
        { "tabulators", "Frequency [kHz]\tLevel [dBµV]\n" },
        { "linear", "frequency_hz,level_mV\n" },
        { "a ratio", "frequency_hz,S21 (dB)\n" },
        { "a magnitude", "frequency_hz,|S21|\n" },
        { "settings", "RBW,10 kHz\nDetector,RMS\nDate,2026-03-01 12:00:00\nfrequency_hz,level_dbm\n" },
        { "the range", "Start,1 MHz\nStop,120 MHz\nPoints,120\nFrequency (MHz),Level (dBm)\n" },
        { "another range", "Start,1 MHz\nStop,110 MHz\nPoints,110\nFrequency (MHz),Level (dBm)\n" },
        { "numbers above", "1,2\n3,4\nfrequency_hz,level_dbm\n" },
        { "two columns of decimal commas above", "\"1,5\",\"2,5\"\n\"1,5\",\"2,5\"\nfrequency_hz,level_dbm\n" },
        { "the other order", "level_dbm,frequency_hz\n" },
        { "sentences", "levels in dBm,frequencies in MHz\n" },
        { "no unit of level", "frequency_hz,level\n" },
        { "no unit of frequency", "frequency,level_dbm\n" },
        { "no names", "" },
        { "names of nothing", "a,b\n" },
        { "no names, the range stated", "Start: 1 MHz\nStop: 120 MHz\n" },
        { "a line of units", "frequency,level\nMHz,dBm\n" },
        { "a correction", "frequency_hz,cable loss (dB)\n" },
        { "a mark", "\uFEFFfrequency_hz,level_dbm\n" },
    };

    public static TheoryData<string> Invented =>
        [.. Directory.GetFiles(Path.Combine(Repository.Root, "fixtures/layouts"), "*", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(Repository.Root, f)).Where(TraceFile.HasTraceExtension)
            .Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Heads))]
    public void LevelsOfAnyKindAreReadAlike(string what, string head)
    {
        Assert.NotEmpty(what);
        (TraceReadOptions known, string line) = (Known(), LineEnd(head));
        var random = new Random(1);
        byte[] first = Bytes(head, Levels("usual", random), line);
        AssertAlike(first, known);
        foreach (string way in Ways)
        {
            AssertAlike(Bytes(head, Levels(way, random), line), known);
        }
    }

    /// <summary>
    /// Numbers of three decimals may have their thousands parted, and whole ones may be decimals: what their marks are may not
    /// hang on the file read first.
    /// </summary>
    [Theory]
    [MemberData(nameof(Heads))]
    public void FrequenciesOfAnyKindAreReadAlike(string what, string head)
    {
        Assert.NotEmpty(what);
        (string line, char mark) = (LineEnd(head), head.Contains('\t') ? '\t' : head.Contains(';') ? ';' : ',');
        var random = new Random(6);
        foreach (string format in new[] { "{0}.000", "{0}.5", "00{0}", "{0}000", "{0}000000000", "30.{0:D3}", "1.{0:D3}",
            "30{0:D3}", "100.{0:D3}" })
        {
            TraceReadOptions known = Known();
            foreach (string way in new[] { "usual", "thousands", "whole", "usual", "leading zeros", "negative thousands",
                "thousands", "rising by thousands", "usual" })
            {
                string rows = string.Concat(Enumerable.Range(0, Rows)
                    .Select(i =>
                        string.Format(CultureInfo.InvariantCulture, format, i + 1) + mark + Marked(way, i, random) + line));
                AssertAlike(Encoding.UTF8.GetBytes(head + rows), known);
            }
        }
    }

    private static string Marked(string way, int row, Random random) => way switch
    {
        "thousands" => Invariant($"{random.Next(1, 100)}.{random.Next(1000):D3}"),
        "negative thousands" => Invariant($"-{random.Next(1, 100)}.{random.Next(1000):D3}"),
        "rising by thousands" => Invariant($"{row / 10 + 1}.{row % 10}00"),
        "leading zeros" => Invariant($"0{random.Next(40, 80)}.{random.Next(100):D2}"),
        _ => Level(way, row, isOdd: false, random),
    };

    [Theory]
    [MemberData(nameof(Heads))]
    public void FilesWhoseLastLineDoesNotEndAreReadAlike(string what, string head)
    {
        Assert.NotEmpty(what);
        (TraceReadOptions known, string line) = (Known(), LineEnd(head));
        var random = new Random(5);
        AssertAlike(Bytes(head, Levels("usual", random), line)[..^line.Length], known);
        for (int i = 0; i < 40; i++)
        {
            byte[] other = Bytes(head, Levels(Ways[i % 2 == 0 ? ^1 : 0], random), line)[..^line.Length];
            AssertAlike(other[..^random.Next(4)], known);
        }
    }

    [Theory]
    [MemberData(nameof(Heads))]
    public void DamagedFilesAreReadAlike(string what, string head)
    {
        Assert.NotEmpty(what);
        (TraceReadOptions known, string line) = (Known(), LineEnd(head));
        var random = new Random(2);
        AssertAlike(Bytes(head, Levels("usual", random), line), known);
        for (int i = 0; i < 80; i++)
        {
            byte[] damaged = Bytes(head, Levels(random.Next(4) == 0 ? "negative whole" : "usual", random), line);
            for (int times = random.Next(1, 3); times > 0; times--)
            {
                damaged = Damaged(damaged, random);
            }

            AssertAlike(damaged, known);
        }
    }

    [Theory]
    [MemberData(nameof(Invented))]
    public void BelowAnyHeadTheLevelsAreReadAlike(string file)
    {
        string[] above = [.. File.ReadLines(Path.Combine(Repository.Root, file)).Take(80)
            .TakeWhile(l => l.Length == 0 || !(char.IsAsciiDigit(l[0]) || l[0] is '-' or '.'))];
        char mark = above.LastOrDefault(l => l.Length > 0) is { } last ? last.Contains(';') ? ';'
            : last.Contains('\t') ? '\t' : ',' : ',';
        string head = string.Concat(above.Select(l => l + "\n"));
        TraceReadOptions known = Known();
        var random = new Random(3);
        foreach (string way in new[] { "usual", "usual", "negative whole", "rising", "one odd", "tiny" })
        {
            AssertAlike(Encoding.UTF8.GetBytes(head + Text(Levels(way, random), mark, "\n")), known, file);
        }
    }

    /// <summary>The shorter way must be taken, or these tests would say nothing of it.</summary>
    [Theory]
    [InlineData("frequency_hz,level_dbm\n", true)]
    [InlineData("RBW,10 kHz\nDetector,RMS\nDate,2026-03-01 12:00:00\nfrequency_hz,level_dbm\n", true)]
    [InlineData("Frequency [kHz]\tLevel [dBµV]\n", true)]
    [InlineData("Frequenz;Pegel (dBm)\n", true)]
    [InlineData("frequency_hz,level_dbm\r\n", true)]
    [InlineData("frequency_hz,|S21|\n", false)]
    [InlineData("frequency_hz,level\n", false)]
    [InlineData("1,2\n3,4\nfrequency_hz,level_dbm\n", false)]
    [InlineData("", false)]
    public void FilesUnderPlainNamesAreTwins(string head, bool expected)
    {
        (TraceReadOptions known, string line) = (Known() with { FrequencyUnit = FrequencyUnit.Hertz }, LineEnd(head));
        var random = new Random(4);
        TraceFile.Look(Bytes(head, Levels("usual", random), line), "first.csv", known);
        byte[] second = Bytes(head, Levels("usual", random), line);
        Assert.Equal(expected, IsTwin(second, "second.csv", known));
        Assert.False(IsTwin(second, "second.s2p", known), "a name may tell a layout");
        Assert.False(IsTwin(second, "second.csv", known with { LevelUnit = LevelUnit.Decibels }),
            "what is known beside the file may decide");
        Assert.False(IsTwin([.. second, .. second[^12..]], "second.csv", known));
        Assert.False(IsTwin(second[..^1], "second.csv", known));
        byte[] open = second[..^line.Length];
        TraceFile.Look(open, "open.csv", known);
        Assert.Equal(expected, IsTwin(open, "second.csv", known));
        Assert.False(IsTwin(open[..^1], "second.csv", known), "the last number may be cut off");
    }

    /// <summary>
    /// A number and what stands behind it: the value is what the usual reading gives, and nothing but a plain level is taken.
    /// </summary>
    [Theory]
    [InlineData("-60.5", 5)]
    [InlineData("60.50", 5)]
    [InlineData("-60", 3)]
    [InlineData("-0.0", 4)]
    [InlineData("123456789.012345", 16)]
    [InlineData("-123456789.012345,", 17)]
    [InlineData("-60.5e1", 5)]
    [InlineData("-60.", 0)]
    [InlineData("-.5", 0)]
    [InlineData("60", 0)]
    [InlineData("+60.5", 0)]
    [InlineData("-", 0)]
    [InlineData("", 0)]
    [InlineData("1234567890.123456", 0)]
    public void APlainLevelIsASignDigitsAndDecimals(string text, int length)
    {
        byte[] bytes = Encoding.ASCII.GetBytes(text);
        Assert.Equal(length, PlainLevel.Read(bytes, out double level));
        if (length > 0)
        {
            Assert.Equal(BitConverter.DoubleToInt64Bits(double.Parse(text[..length], CultureInfo.InvariantCulture)),
                BitConverter.DoubleToInt64Bits(level));
        }
    }

    private static TraceReadOptions Known() => new() { Twins = new TwinMemory() };

    private static string LineEnd(string head) =>
        head.EndsWith("\r\n", StringComparison.Ordinal) ? "\r\n" : head.EndsWith('\r') ? "\r" : "\n";

    private static byte[] Bytes(string head, string[] levels, string lineEnd) =>
        Encoding.UTF8.GetBytes(head + Text(levels, head.Contains('\t') ? '\t' : head.Contains(';') ? ';' : ',', lineEnd));

    private static string Text(string[] levels, char mark, string lineEnd) =>
        string.Concat(levels.Select((l, i) => Invariant($"{i + 1}{mark}{l}{lineEnd}")));

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);

    private static string[] Levels(string way, Random random)
    {
        int odd = random.Next(Rows);
        return [.. Enumerable.Range(0, Rows).Select(i => Level(way, i, i == odd, random))];
    }

    private static string Level(string way, int row, bool isOdd, Random random)
    {
        double level = -40 - (40 * random.NextDouble());
        return way switch
        {
            "negative whole" => Invariant($"{Math.Round(level)}"),
            "whole" => Invariant($"{-Math.Round(level)}"),
            "signed" => Invariant($"+{-level:F2}"),
            "exponents" => Invariant($"{level:E5}"),
            "long" => Invariant($"{level:F18}"),
            "not a number" => isOdd ? "NaN" : Invariant($"{level:F2}"),
            "blank" => isOdd ? "" : Invariant($"{level:F2}"),
            "all 0" => "0.0",
            "all -200" => "-200.0",
            "far below" => isOdd ? "-300.5" : Invariant($"{level:F2}"),
            "far above" => isOdd ? "4000.25" : Invariant($"{level:F2}"),
            "tiny" => Invariant($"{0.001 + (0.008 * random.NextDouble()):F6}"),
            "rising" => Invariant($"{row + 0.5:F1}"),
            "falling" => Invariant($"{200.5 - row:F1}"),
            "counting" => Invariant($"{row:F1}"),
            "as the frequencies" => Invariant($"{row + 1:F1}"),
            "one odd" => isOdd ? "1e-3" : Invariant($"{level:F2}"),
            "one whole" => isOdd ? "-60" : Invariant($"{level:F2}"),
            "padded" => Invariant($"{level:F2} "),
            "points without decimals" => Invariant($"{Math.Round(level)}."),
            "as short as it goes" => Invariant($"{Math.Round(level, 2)}"),
            "zero below" => isOdd ? "-0.0" : Invariant($"{level:F2}"),
            _ => Invariant($"{level:F3}"),
        };
    }

    private static byte[] Damaged(byte[] bytes, Random random)
    {
        const string Often = "0123456789.-+eE,;\t \r\n#!|\"[x\0";
        if (bytes.Length < 2)
        {
            return bytes;
        }

        int at = random.Next(1, bytes.Length);
        int start = Array.LastIndexOf(bytes, (byte)'\n', at) + 1;
        int end = Array.IndexOf(bytes, (byte)'\n', at) is >= 0 and var found ? found + 1 : bytes.Length;
        byte other = random.Next(5) == 0 ? (byte)random.Next(256) : (byte)Often[random.Next(Often.Length)];
        return random.Next(8) switch
        {
            0 => [.. bytes[..at], other, .. bytes[(at + 1)..]],
            1 => [.. bytes[..at], other, .. bytes[at..]],
            2 => [.. bytes[..at], .. bytes[(at + 1)..]],
            3 => [.. bytes[..end], .. bytes[start..end], .. bytes[end..]],
            4 => end - start == bytes.Length ? bytes : [.. bytes[..start], .. bytes[end..]],
            5 => bytes[..at],
            6 => [.. bytes[..(end - 1)], (byte)'\r', .. bytes[(end - 1)..]],
            _ => [.. bytes[..start], .. bytes[start..end].Reverse(), .. bytes[end..]],
        };
    }

    private static bool IsTwin(byte[] bytes, string name, TraceReadOptions known) =>
        known.Twins!.Read(SweepStats.Files.Traces.Text.FileBytes.Of(bytes), name, known) is not null;

    private static void AssertAlike(byte[] bytes, TraceReadOptions known, string name = "file.csv")
    {
        TraceReading shorter = TraceFile.Look(bytes, name, known);
        TraceReading longer = TraceFile.Look(bytes, name, known with { Twins = null });
        Assert.Equal(longer.Faults.AsEnumerable(), shorter.Faults.AsEnumerable());
        Assert.Equal(longer.Assumptions.AsEnumerable(), shorter.Assumptions.AsEnumerable());
        Assert.Equal((longer.Settings, longer.Sha256, longer.IsStacked, longer.AreNamedApart),
            (shorter.Settings, shorter.Sha256, shorter.IsStacked, shorter.AreNamedApart));
        Assert.Equal(longer.Traces.Length, shorter.Traces.Length);
        foreach ((Trace expected, Trace found) in longer.Traces.Zip(shorter.Traces))
        {
            AssertAlike(expected, found);
        }
    }

    private static void AssertAlike(Trace expected, Trace found)
    {
        Assert.Equal((expected.Column, expected.Quantity, expected.Unit, expected.Settings, expected.TakenAt, expected.Blank),
            (found.Column, found.Quantity, found.Unit, found.Settings, found.TakenAt, found.Blank));
        Assert.Equal(expected.Doubts.AsEnumerable(), found.Doubts.AsEnumerable());
        Assert.Equal(expected.Axis.Hertz.AsEnumerable(), found.Axis.Hertz.AsEnumerable());
        Assert.True(MemoryMarshal.AsBytes(expected.Levels.AsSpan()).SequenceEqual(MemoryMarshal.AsBytes(found.Levels.AsSpan())));
        Assert.Equal((expected.Phases.Length, expected.ReverseLevels.Length), (found.Phases.Length, found.ReverseLevels.Length));
    }
}
