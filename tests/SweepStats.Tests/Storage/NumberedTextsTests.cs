using SweepStats.Storage;
using Xunit;

namespace SweepStats.Tests.Storage;

public sealed class NumberedTextsTests
{
    [Fact]
    public void EachTextHasOneNumberInTheOrderOfTheirComing()
    {
        var texts = new NumberedTexts(3);
        Assert.Equal([0, 1, 0, 2, 1], new[] { "a", "b", "a", "c", "b" }.Select(texts.Of));
        Assert.Equal(["a", "b", "c"], texts.All.AsEnumerable());
    }

    [Fact]
    public void OneMoreThanHaveRoomIsRefusedAndTheOthersStay()
    {
        var texts = new NumberedTexts(2);
        Assert.Equal([0, 1], new[] { "a", "b" }.Select(texts.Of));
        Assert.Contains("more than 2", Assert.Throws<ArgumentException>(() => texts.Of("c")).Message, StringComparison.Ordinal);
        Assert.Equal(1, texts.Of("b"));
    }
}
