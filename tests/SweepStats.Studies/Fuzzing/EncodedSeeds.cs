using System.Text;

namespace SweepStats.Studies.Fuzzing;

/// <summary>The same kind of table in every encoding and with every line end that files come in.</summary>
internal static class EncodedSeeds
{
    private static string Table =>
        "RBW,9 kHz\nTemperature,21 °C\nFrequency (Hz),Level (dBµV)\n" + SeedRows.Of(25, 1e6, 1e5, "{0},{3:F2}");

    public static IEnumerable<FuzzSeed> All =>
    [
        FuzzSeed.Of("utf8-mark.csv", Table, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true)),
        FuzzSeed.Of("utf16-little.csv", Table, Encoding.Unicode),
        FuzzSeed.Of("utf16-big.csv", Table, Encoding.BigEndianUnicode),
        FuzzSeed.Of("latin1.csv", Table, Encoding.Latin1),
        FuzzSeed.Of("carriage-returns.csv", Table.Replace('\n', '\r')),
        FuzzSeed.Of("windows-ends.csv", Table.Replace("\n", "\r\n", StringComparison.Ordinal)),
        FuzzSeed.Of("mixed-ends.csv",
            string.Concat(Table.Split('\n').Select((line, i) => line + (i % 3) switch { 0 => "\r\n", 1 => "\n", _ => "\r" }))),
        FuzzSeed.Of("nul-padding.csv", SeedRows.Of(25, 100000, 100, "{0:F1}\0,{1:F1}\0,\0")),
        FuzzSeed.Of("mark-before-number.csv", SeedRows.Of(25, 100000, 100, "{0:F1},{1:F1}"),
            new UTF8Encoding(encoderShouldEmitUTF8Identifier: true)),
        FuzzSeed.Of("mark-before-separator.csv", "sep=;\n" + SeedRows.Of(25, 100000, 100, "{0:F1};{1:F1}"),
            new UTF8Encoding(encoderShouldEmitUTF8Identifier: true)),
    ];
}
