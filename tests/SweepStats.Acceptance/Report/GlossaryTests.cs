using System.Xml.Linq;
using SweepStats.Report.Pages;
using Xunit;

namespace SweepStats.Acceptance.Report;

public sealed class GlossaryTests
{
    [Fact]
    public void ThePageEndsWithTheTenWordsOfTheGuide()
    {
        XElement last = new Page(Samples.ThreeLots).Tree.Descendants("section").Last();
        Assert.Equal(GlossaryWords.GlossaryHeading, last.Descendants("h2").Single().Value);
        Assert.Equal(10, last.Descendants("dt").Count());
        string guide = File.ReadAllText(Path.Combine(Repository.Root, "src/SweepStats.Cli/Guide/numbers.md"));
        Assert.Contains($"## {GlossaryWords.GlossaryHeading}\n", guide, StringComparison.Ordinal);
        Assert.All(
            last.Descendants("dt").Zip(last.Descendants("dd")),
            entry => Assert.Contains($"- **{entry.First.Value}**: {entry.Second.Value}\n", guide, StringComparison.Ordinal));
    }
}
