using System.Text;
using SweepStats.Files;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>Keywords of version 2.0 that keep a file from being read, each with its line, what is wrong and what to do.</summary>
public sealed class TouchstoneKeywordsRefused
{
    private const string Sound = "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] 2\n[Two-Port Data Order] 21_12\n[Number of "
        + "Frequencies] 2\n[Network Data]\n1 -1 0 -2 0 -1 0 -2 0\n2 -1 0 -2 0 -1 0 -2 0\n[End]\n";

    [Theory]
    [InlineData("2.0", "3.0", 1, "[Version] holds '3.0'", "2.0")]
    [InlineData("[Version] 2.0\n", "", 2, "[Number of Ports] stands before [Version]", "[Version] 2.0")]
    [InlineData("# MHz S DB R 50\n", "", 0, "the option line is missing", "Or write the option line")]
    [InlineData("Ports] 2", "Ports] 3", 3, "[Number of Ports] holds '3'", "2, as the file's extension tells")]
    [InlineData("Ports] 2", "Ports] two", 3, "[Number of Ports] holds 'two'", "2, as the file's extension tells")]
    [InlineData("[Number of Ports] 2\n", "", 0, "[Number of Ports] is missing", "export the file again")]
    [InlineData("[Two-Port Data Order] 21_12\n", "", 0, "[Two-Port Data Order] is missing", "only the instrument")]
    [InlineData("21_12", "21-12", 4, "[Two-Port Data Order] holds '21-12'", "12_21 or 21_12")]
    [InlineData("Frequencies] 2", "Frequencies] 0", 5, "[Number of Frequencies] holds '0'", "at least 1")]
    [InlineData("Frequencies] 2", "Frequencies] 3", 8, "announces 3 points and ends after 2", "cut off")]
    [InlineData("[Network Data]", "[Network Dada]", 6, "[Network Dada] is not a keyword", "spelling")]
    [InlineData("[Network Data]", "[Network Data", 6, "a bracket is opened and not closed", "[Network Data]")]
    [InlineData("[Network Data]\n", "", 6, "'1 -1 0 -2 0 -1 0 -2 0' stands before [Network Data]", "[Network Data]")]
    [InlineData("[Network Data]", "[Number of Ports] 2", 6, "[Number of Ports] is given twice", "leave one")]
    [InlineData("[Network Data]", "[Matrix Format] Half\n[Network Data]", 6, "[Matrix Format] holds 'Half'",
        "Full, Lower or Upper")]
    [InlineData("[Network Data]", "[Reference] 50\n[Network Data]", 6, "[Reference] holds '50', not 2 resistances",
        "for each port")]
    [InlineData("[Network Data]", "[Reference]\n50\n75 100\n[Network Data]", 6,
        "[Reference] holds '50 75 100', not 2 resistances", "for each port")]
    [InlineData("[Network Data]", "[Reference] 50 -50\n[Network Data]", 6, "[Reference] holds '50 -50'", "for each port")]
    [InlineData("[Network Data]", "[Mixed-Mode Order] D1,2\nC1,2\n[Network Data]", 6, "mixed-mode parameters (D1,2 C1,2)",
        "single-ended")]
    [InlineData("[Network Data]", "[Mixed-Mode Order] S2 S1\n[Network Data]", 6, "lists the ports as S2 S1", "in order")]
    [InlineData("[Network Data]", "[Begin Information]\n[Network Data]", 6, "[Begin Information] is not closed",
        "[End Information]")]
    [InlineData("[End]", "[Ende]", 9, "'[Ende]' is not a keyword", "[Noise Data] and [End]")]
    [InlineData("[End]", "[Noise Data]\n1 2 3 4\n[End]", 10, "does not hold 5 numbers", "correct the row")]
    [InlineData("2 -1 0 -2 0 -1 0 -2 0\n[End]", "2 -1 0 -2 0", 8, "the last point lacks 4 of 9 numbers", "cut off")]
    public void AKeywordIsRefusedForItsReason(string sound, string bad, int line, string problem, string remedy)
    {
        int at = Sound.IndexOf(sound, StringComparison.Ordinal);
        TraceReading reading = Look("t.s2p", Sound[..at] + bad + Sound[(at + sound.Length)..]);
        ReadFault fault = Assert.Single(reading.Faults);
        Assert.Empty(reading.Traces);
        Assert.Equal(line == 0 ? null : line, fault.Line);
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
        Assert.Contains(remedy, fault.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void AKeywordInAFileOfVersionOneIsRefused() =>
        Assert.Contains("a keyword of version 2 in a file of version 1",
            Assert.Single(Look("t.s1p", "# MHz S DB\n1 2 3\n[End]\n").Faults).Problem, StringComparison.Ordinal);

    [Fact]
    public void DamagedFilesNeverThrowAndAreEitherReadOrRefused()
    {
        var random = new Random(11);
        byte[] sound =
            Encoding.UTF8.GetBytes(Sound.Replace("[Network", "[Reference]\n50 50\n[Matrix Format] Full\n[Network",
                StringComparison.Ordinal) + "[Noise Data]\n");
        byte[] marks = Encoding.UTF8.GetBytes("[]#!0-.eE \n\tSd\u001aµ");
        for (int i = 0; i < 3000; i++)
        {
            byte[] bytes = i < sound.Length ? sound[..(i + 1)] : [.. sound];
            for (int k = 0; k < i % 5; k++)
            {
                bytes[random.Next(bytes.Length)] = marks[random.Next(marks.Length)];
            }

            foreach (string name in new[] { "t.s1p", "t.s2p", "t.s3p" })
            {
                TraceReading reading = TraceFile.Look(bytes, name, new TraceReadOptions());
                Assert.NotEqual(reading.Faults.IsEmpty, reading.Traces.IsEmpty);
            }
        }
    }

    private static TraceReading Look(string name, string text) =>
        TraceFile.Look(Encoding.UTF8.GetBytes(text), name, new TraceReadOptions());
}
