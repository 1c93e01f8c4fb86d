using System.Text;
using SweepStats.Files.Results;
using Xunit;

namespace SweepStats.Acceptance.Faults;

/// <summary>Names that a spreadsheet would take for formulas, written so that it does not.</summary>
public sealed class FormulaCells
{
    [Theory]
    [InlineData("=1+1")]
    [InlineData("＝1+1")]
    [InlineData("＋1")]
    [InlineData("－1")]
    [InlineData("＠x")]
    [InlineData("\ufeff=1+1")]
    [InlineData("\u200b\u200e+1")]
    [InlineData("\t=1")]
    public void TheyGetAnApostrophe(string name) =>
    Assert.StartsWith("'", Encoding.UTF8.GetString(CsvRows.TextCell(name)), StringComparison.Ordinal);

    [Theory]
    [InlineData("A1")]
    [InlineData("\ufeffA=1")]
    [InlineData("")]
    [InlineData("\ufeff")]
    public void OthersStayAsTheyAre(string name) => Assert.Equal(name, Encoding.UTF8.GetString(CsvRows.TextCell(name)));
}
