using System.Globalization;
using System.Text;
using SweepStats.Files.Results;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Acceptance.Files;

public sealed class ResultBytes
{
    private static readonly string[] Forms = ["F0", "F1", "F2", "F3", "F4", "F5", "F6"];

    [Theory]
    [InlineData(0.0)]
    [InlineData(-0.00001)]
    [InlineData(0.00005)]
    [InlineData(2.675)]
    [InlineData(-99.99995)]
    [InlineData(1e12)]
    [InlineData(-1.7e300)]
    public void ANumberIsWrittenAsTheRuntimeWritesIt(double value) =>
        Assert.All(Enumerable.Range(1, 6), decimals => Assert.Equal(Plain(value, decimals), Written(value, decimals)));

    [Fact]
    public void ZeroKeepsTheSignThatTheRuntimeShows() => Assert.Equal(Plain(-0.0, 4), Written(-0.0, 4));

    [Fact]
    public void SoAreManyThousandOthersAndTheirTies()
    {
        var random = new RandomSource(7);
        for (int i = 0; i < 20_000; i++)
        {
            double value = (random.Uniform() - 0.5) * Math.Pow(10, (14 * random.Uniform()) - 5);
            double tie = Math.Round(value, 4) + 0.00005;
            Assert.All([value, tie, Math.BitDecrement(tie), Math.BitIncrement(tie)],
                v => Assert.Equal(Plain(v, 4), Written(v, 4)));
        }
    }

    // More than one buffer of rows, levels of every kind among them.
    [Fact]
    public void RowsOfBytesAreThoseOfText()
    {
        using var bytes = new MemoryStream();
        using var text = new MemoryStream();
        using (var rows = new CsvRows(bytes, "a,b"))
        using (var plain = new CsvRows(text, "a,b"))
        {
            var random = new RandomSource(3);
            for (int i = 0; i < 20_000; i++)
            {
                double? level = (i % 7) switch
                {
                    0 => null,
                    1 => double.PositiveInfinity,
                    2 => -0.00001,
                    _ => 200 * (random.Uniform() - 0.5)
                };
                double? dof = (i % 5) switch { 0 => null, 1 => double.PositiveInfinity, _ => 1000 * random.Uniform() };
                rows.Level(level).DegreesOfFreedom(dof).Cell("bâ"u8).End();
                plain.Cell(ResultNumber.Level(level)).Cell(ResultNumber.DegreesOfFreedom(dof)).Cell("bâ").End();
            }
        }

        Assert.InRange(bytes.Length, 200_000, 1_000_000);
        Assert.Equal(text.ToArray(), bytes.ToArray());
    }

    private static string Plain(double value, int decimals) => value.ToString(Forms[decimals], CultureInfo.InvariantCulture);

    private static string Written(double value, int decimals)
    {
        var bytes = new byte[350];
        return Encoding.UTF8.GetString(bytes, 0, FixedNumber.Write(value, decimals, bytes));
    }
}
