using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Sweeps;

public sealed class NaturalOrderTests
{
    private static readonly string[] Names =
        ["", "1", "01", "2", "10", "A1", "a", "a1", "a01", "a2", "a10", "a10b", "s2", "s10", "s10.2", "s10.10", "ä"];

    [Theory]
    [InlineData("s2", "s10")]
    [InlineData("lot2/s10", "lot10/s2")]
    [InlineData("9", "10")]
    [InlineData("s19", "s103")]
    [InlineData("p99999999999999999998", "p99999999999999999999")]
    [InlineData("A", "a")]
    [InlineData("s", "s1")]
    public void NumbersInNamesCountAsNumbers(string first, string second)
    {
        Assert.True(NaturalOrder.Instance.Compare(first, second) < 0);
        Assert.True(NaturalOrder.Instance.Compare(second, first) > 0);
    }

    [Fact]
    public void ItIsATotalOrderThatOnlyEqualNamesTieIn()
    {
        foreach (string a in Names)
        {
            foreach (string b in Names)
            {
                Assert.Equal(Math.Sign(NaturalOrder.Instance.Compare(a, b)), -Math.Sign(NaturalOrder.Instance.Compare(b, a)));
                Assert.Equal(a == b, NaturalOrder.Instance.Compare(a, b) == 0);
                Assert.All(Names, c => Assert.False(
                    NaturalOrder.Instance.Compare(a, b) < 0 && NaturalOrder.Instance.Compare(b, c) < 0
                        && NaturalOrder.Instance.Compare(a, c) >= 0));
            }
        }
    }

    [Fact]
    public void SpecimensStandByLotThenNameAsPeopleCount()
    {
        SpecimenName[] names = [new("lot10", "s1"), new("lot2", "s10"), new("lot2", "s2"), new("lot2", "s1")];
        Assert.Equal(["lot2/s1", "lot2/s2", "lot2/s10", "lot10/s1"], names.Order().Select(n => n.ToString()));
    }
}
