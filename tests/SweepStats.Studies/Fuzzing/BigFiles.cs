using System.Text;

namespace SweepStats.Studies.Fuzzing;

/// <summary>Files that are big in every way a file can be: rows, columns, lines, fields, quotes, settings, bytes.</summary>
internal static class BigFiles
{
    private const int Million = 1_000_000;
    private const int Megabyte = 1 << 20;
    private const string Head = "Frequency (Hz),Level (dBm)\n";

    public static IReadOnlyList<BigFile> All { get; } =
    [
        new("ten-million-rows.csv", s => Rows(s, Head, 10 * Million, i => $"{Million + i},-2\n")),
        new("million-rows-megahertz.csv", s => Rows(s, "Frequency (MHz);Pegel (dBm)\n", Million, i => $"{i},25;-70,5\n")),
        new("million-falling-rows.csv", s => Rows(s, Head, Million, i => $"{Million - i},-2\n")),
        new("million-bad-rows.csv", s => Rows(s, Head + "1,2\n2,3\n", Million, i => $"{i},x\n")),
        new("million-changing-widths.csv", s => Rows(s, Head, Million / 2, i => $"{i},-2\n{i},-2,3\n")),
        new("hundred-thousand-blocks.csv",
            s => Rows(s, "", Million / 10, i => $"Trace {i}\nFrequency (Hz),Level (dBm)\n1,2\n2,3\n3,4\n\n")),
        new("sweeps-in-rows.csv",
            s => Rows(s, "Sweep,Date,Time,ms," + Row(1000, i => $"{88 + i}.5") + "\n", 5000,
                i => $"{i},2024-03-05,10:11:12,.5," + Row(1000, _ => "-70.5") + "\n")),
        new("segments-in-rows.csv",
            s => Rows(s, "", Million / 5,
                i => $"2024-03-05, 10:11:12, {i}000, {i + 1}000, 200.00, 16, -71.1, -70.2, -70.9, -71.3, -70.0\n")),
        new("columns.csv", s => Rows(s, Row(200_000, i => $"T{i % 10}") + "\n", 4, i => Row(200_000, _ => $"{i}") + "\n")),
        new("columns-headerless.csv", s => Rows(s, "", 4, i => Row(400_000, _ => $"{i}") + "\n")),
        new("megabyte-digits.csv", s => Rows(s, Head, 50, _ => new string('9', Megabyte - 1) + "\n")),
        new("megabyte-words.csv", s => Rows(s, Head + "1,2\n2,3\n", 50, _ => new string('A', Megabyte) + "\n")),
        new("longer-line.csv", s => Rows(s, Head + "1,2\n2,3\n", 1, _ => new string('1', Megabyte + 1) + "\n")),
        new("one-line-300-megabytes.csv", s => Rows(s, "", 300, _ => new string('1', Megabyte))),
        new("preamble.csv", s => Rows(s, "", Million, i => $"Key {i},value {i}\n", Head + "1,2\n2,3\n3,4\n")),
        new("preamble-settings.csv", s => Rows(s, "", Million, i => $"RBW,{i} kHz\n", Head + "1,2\n2,3\n3,4\n")),
        new("preamble-of-blanks.csv", s => Rows(s, "", 20_000, _ => "a" + new string(' ', 398) + "\n", Head + "1,2\n2,3\n3,4\n")),
        new("preamble-of-slashes.csv",
            s => Rows(s, "", 20_000, _ => "a (" + string.Concat(Enumerable.Repeat("/ ", 190)) + "\n", Head + "1,2\n2,3\n3,4\n")),
        new("preamble-of-words-and-blanks.csv",
            s => Rows(s, "", 20_000, _ => new string('a', 133) + new string(' ', 265) + "!\n", Head + "1,2\n2,3\n3,4\n")),
        new("preamble-of-dates.csv", s =>
            Rows(s, "", 20_000, _ => "Date," + string.Concat(Enumerable.Repeat("12-3-", 79)) + "\n", Head + "1,2\n2,3\n3,4\n")),
        new("header-of-blanks.csv", s =>
            Rows(s, "Frequency (Hz),", 1, _ => new string('a', 500_000) + new string(' ', 500_000) + "(!\n", "1,2\n2,3\n3,4\n")),
        new("groups.csv", s => Rows(s, "", 20_000, _ => string.Concat(Enumerable.Repeat("1.111", 190)) + "x\n")),
        new("quotes-in-a-line.csv", s => Rows(s, "", 1, _ => new string('"', Million) + "\n", "1,2\n2,3\n")),
        new("quotes-in-lines.csv", s => Rows(s, Head + "1,2\n2,3\n", Million, _ => "\"\n")),
        new("brackets-in-header.csv",
            s => Rows(s, "Frequency (Hz),Level ", 1, _ => new string('(', Million) + "\n", "1,2\n2,3\n")),
        new("brackets-in-comment.csv",
            s => Rows(s, Head, 1, _ => "# " + string.Concat(Enumerable.Repeat("( ", Million / 4)) + "\n", "1,2\n2,3\n")),
        new("brackets-over-sweeps.csv",
            s => Rows(s, "", 1, _ => "S" + string.Concat(Enumerable.Repeat("[End]", Million / 10)),
                ",Date,Time,ms,88.0,89.0\n1,2024-03-05,10:11:12,1,2,3\n2,2024-03-05,10:11:13,1,2,3\n")),
        new("brackets-in-lines.csv", s => Rows(s, "", Million, _ => "[\n", Head + "1,2\n2,3\n")),
        new("blank-lines.csv", s => Rows(s, "", 100 * Megabyte / 1000, _ => new string('\n', 1000))),
        new("blank-lines-in-table.csv", s => Rows(s, Head + "1,2\n", 10 * Megabyte / 1000, _ => new string('\n', 1000), "2,3\n")),
        new("separators.csv", s => Rows(s, Head + "1,2\n2,3\n", Million, _ => ",,,,,,,,,,\n")),
        new("resistances.s2p", s => Rows(s, "#", Million / 2, _ => " R", "\n1 1 0 1 0 1 0 1 0\n")),
        new("resistances-few.s2p", s => Rows(s, "#", 20_000, _ => " R", "\n1 1 0 1 0 1 0 1 0\n")),
        new("points.s2p", s => Rows(s, "# Hz S DB R 50\n", 2 * Million, i => $"{i} -1 0 -20 0 -20 0 -1 0\n")),
        new("points-after-cut.s4p", s => Rows(s, "# Hz S DB R 50\n", 2 * Million, i => $"{i} -1 0 -20\n")),
        new("words.s2p", s => Rows(s, "# Hz S DB R 50\n", Million, _ => "x\n")),
        new("ports.s4p",
            s => Rows(s, "[Version] 2.0\n# Hz S DB\n[Number of Ports] 99999999\n[Number of Frequencies] "
                + "2000000000\n[Network Data]\n", 1000, i => $"{i} 1 2\n")),
        new("references.s2p",
            s => Rows(s, "[Version] 2.0\n# Hz S DB\n[Number of Ports] 2\n[Reference]\n", Million, _ => "50\n",
                "[Number of Frequencies] 1\n[Network Data]\n1 1 2 1 2 1 2 1 2\n")),
        new("keywords.s2p", s => Rows(s, "[Version] 2.0\n# Hz S DB\n", Million, i => $"[Keyword {i}] 1\n")),
        new("latin1-100-megabytes.csv",
            s => Rows(s, "Frequency (Hz),Level (dBµV)\n", 10 * Million, i => $"{Million + i},-2\n", encoding: Encoding.Latin1)),
        new("utf16-200-megabytes.csv",
            s => Rows(s, "\uFEFF" + Head, 10 * Million, i => $"{Million + i},-2\n", encoding: Encoding.Unicode)),
        new("latin1-800-megabytes.csv",
            s => Rows(s, "dBµV\n", 800, _ => string.Concat(Enumerable.Repeat("x,y\n", Megabyte / 4)), encoding: Encoding.Latin1)),
        new("zeros-64-megabytes.csv", s => s.SetLength(64L << 20)),
        new("zeros-one-gibibyte.csv", s => s.SetLength(1L << 30)),
        new("zeros-beyond-a-gibibyte.csv", s => s.SetLength((1L << 30) + 1)),
        new("zeros-terabyte.csv", s => s.SetLength(1L << 40)),
    ];

    private static string Row(int fields, Func<int, string> field) => string.Join(',', Enumerable.Range(0, fields).Select(field));

    private static void Rows(Stream stream, string head, int rows, Func<int, string> row, string foot = "",
        Encoding? encoding = null)
    {
        using var writer = new StreamWriter(stream, encoding is UnicodeEncoding ? new UnicodeEncoding(false, false)
            : encoding ?? new UTF8Encoding(false), 1 << 16, leaveOpen: true);
        writer.Write(head);
        for (int i = 0; i < rows; i++)
        {
            writer.Write(row(i));
        }

        writer.Write(foot);
    }
}
