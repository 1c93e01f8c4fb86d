using System.Text.RegularExpressions;
using Xunit;

namespace SweepStats.Acceptance.Commands;

/// <summary>The guide: pages in the source, which the program carries.</summary>
public sealed partial class GuideTests
{
    private const string Folder = "src/SweepStats.Cli/Guide";

    private static readonly string[] Names =
        [.. Directory.GetFiles(Path.Combine(Repository.Root, Folder), "*.md")
            .Select(file => Path.GetFileNameWithoutExtension(file)!).Order()];

    public static TheoryData<string> Pages => [.. Names];

    [Fact]
    public void TheListNamesEveryPageOnOneScreen()
    {
        (int code, string output, string error) = Shell.Run("guide");
        Assert.Equal((0, ""), (code, error));
        string[] lines = output.TrimEnd().Split(Environment.NewLine);
        Assert.InRange(lines.Length, 5, 25);
        Assert.Equal(Names, lines.Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[2]).Order());
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void APageIsPrintedWithoutMarks(string page)
    {
        (int code, string output, string error) = Shell.Run("guide", page);
        Assert.Equal((0, ""), (code, error));
        Assert.DoesNotMatch(@"(?m)^#|^\| ?-|\]\(", output);
        string title = File.ReadLines(Path.Combine(Repository.Root, Folder, page + ".md")).First();
        Assert.StartsWith(title[2..], output, StringComparison.Ordinal);
    }

    [Fact]
    public void CodeKeepsItsStarsAndTablesBecomeLines()
    {
        string page = Shell.Run("guide", "campaign").Out;
        Assert.Contains("match = \"covered/**/*.txt\"", page, StringComparison.Ordinal);
        Assert.Contains("\n  `[floor]`, `[reference]`: when they were taken", page, StringComparison.Ordinal);
        Assert.DoesNotContain("**Mismatch**", page, StringComparison.Ordinal);
        Assert.DoesNotContain("section: states", page, StringComparison.Ordinal);
    }

    [Fact]
    public void AnotherPageIsRefused() => Assert.Equal(2, Shell.Run("guide", "weather").Code);

    // README, guide and the page for developers: each link within the repository leads somewhere.
    [Fact]
    public void LinksLeadSomewhere()
    {
        string[] pages = ["README.md", "DEVELOPERS.md", .. Names.Select(name => $"{Folder}/{name}.md")];
        Assert.All(pages, page =>
        {
            string folder = Path.GetDirectoryName(Path.Combine(Repository.Root, page))!;
            Assert.All(Link().Matches(File.ReadAllText(Path.Combine(Repository.Root, page))), link =>
                Assert.True(Path.Exists(Path.Combine(folder, link.Groups[1].Value)), $"{page}: {link.Value}"));
        });
    }

    // What a person reads first stays short.
    [Theory]
    [InlineData("README.md", 8)]
    [InlineData("DEVELOPERS.md", 12)]
    public void TheFirstPagesAreShort(string page, int kilobytes) =>
    Assert.InRange(new FileInfo(Path.Combine(Repository.Root, page)).Length, 1024, kilobytes * 1024);

    [GeneratedRegex(@"\]\((?!http)([^)#]+)")]
    private static partial Regex Link();
}
