using System.Text;
using SweepStats.Tests.Architecture;
using Xunit;

namespace SweepStats.Tests.Sentences;

/// <summary>
/// Every sentence that the program can print, with the condition under which it does, stands in reports/sentences.md to be read.
/// </summary>
public sealed class SentenceListTests
{
    private const string Kept = "reports/sentences.md";

    [Fact]
    public void TheListIsUpToDate()
    {
        string list = List();
        File.WriteAllText(Path.Combine(AppContext.BaseDirectory, "sentences.md"), list);
        Assert.True(
            list == File.ReadAllText(Path.Combine(SourceTree.Root, Kept)),
            $"Read what changed in {Path.Combine(AppContext.BaseDirectory, "sentences.md")}, then copy it to {Kept}.");
    }

    [Fact]
    public void TextConditionsAndCallersAreFound()
    {
        const string Source = """
            class Said
            {
                string Of(int n) => n > 1 ? Many(n) : "There is only one.";
                string Many(int n)
                {
                    if (n > 9) { return "Far too many of them"; }
                    return $"All {n} of them " + "are fine.";
                }
            }
            """;
        SourceSentence[] found = [.. SentenceSearch.In(Source)];
        Assert.Equal(["There is only one.", "Far too many of them", "All {n} of them are fine."], found.Select(s => s.Text));
        Assert.Equal(["not (n > 1)"], found[0].Conditions);
        Assert.Equal(["n > 1", "n > 9"], found[1].Conditions);
        Assert.Equal(["n > 1", "not (n > 9)"], found[2].Conditions);
        Assert.Equal("Said.Many", found[2].Place);
    }

    [Fact]
    public void MembersOfJsonAreNoSentence()
    {
        Assert.Empty(SentenceSearch.In("""class Form { string Of = "\"type\": \"number\", \"minimum\": 0"; }"""));
        Assert.Single(SentenceSearch.In("""class Form { string Of = "\"all of them\": so it says"; }"""));
    }

    private static string List()
    {
        var list = new StringBuilder("# Every sentence that can be printed, and when\n\n"
            + "Taken from the source by tests/SweepStats.Tests/Sentences. What is filled in stands in braces; the conditions "
            + "are those of the source, outermost first.\n");
        int count = 0;
        foreach (string file in SourceTree.Files("src"))
        {
            SourceSentence[] found = [.. SentenceSearch.In(File.ReadAllText(file))];
            if (found.Length > 0)
            {
                list.Append("\n## ").Append(Path.GetRelativePath(SourceTree.Root, file).Replace('\\', '/')).Append("\n\n");
            }

            foreach (SourceSentence sentence in found)
            {
                list.Append("- ").Append(sentence.Text).Append('\n');
                string when = sentence.Conditions.Count == 0 ? "always" : "when " + string.Join("; and ", sentence.Conditions);
                list.Append("  - ").Append(sentence.Place).Append(": ").Append(when).Append('\n');
            }

            count += found.Length;
        }

        return list.Append('\n').Append(count).Append(" sentences.\n").ToString();
    }
}
