using SweepStats.Acceptance.Files;
using SweepStats.Library;
using SweepStats.Shielding;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Acceptance.Library;

public sealed class MeasurementTests
{
    private static readonly Measurement Demo = Measurement.Of(Commands.Shell.Demo);

    [Fact]
    public void ItSaysOfTheDemoWhatTheProgramSays()
    {
        Assert.Equal(Trust.Limited, Demo.Trust);
        Assert.Contains(Demo.Headline, Commands.Shell.Run("check", Commands.Shell.Demo, "--verbose").Out,
            StringComparison.Ordinal);
        Assert.EndsWith(Demo.Headline, Demo.ToString(), StringComparison.Ordinal);
        Assert.Equal(12, Demo.Specimens.Length);
    }

    [Fact]
    public void ASpecimenGoesByItsNameOrByItsLotToo()
    {
        Assert.Same(Demo["B/B02"], Demo["B02"]);
        Assert.Equal("B/B02", Demo["B02"].ToString());
        Assert.Equal(Demo["B02"].Name, Demo["B02"].Band.Name);
    }

    [Fact]
    public void ANameThatNoSpecimenHasIsAnsweredWithThoseThatAreThere()
    {
        string told = Assert.Throws<KeyNotFoundException>(() => Demo["b02"]).Message;
        Assert.Contains("A/A01, A/A02", told, StringComparison.Ordinal);
    }

    [Fact]
    public void ANameThatTwoLotsHaveAsksForTheLot()
    {
        using var scratch = new ScratchFolder();
        Commands.Shell.Run("rehearse", scratch.Path + "/c", "--lots", "2", "--specimens", "1", "--points", "11", "--seed", "3");
        foreach (string lot in new[] { "A", "B" })
        {
            Directory.Move($"{scratch.Path}/c/covered/{lot}/{lot}01", $"{scratch.Path}/c/covered/{lot}/one");
        }

        Measurement two = Measurement.Of(scratch.Path + "/c");
        string told = Assert.Throws<KeyNotFoundException>(() => two["one"]).Message;
        Assert.Contains("A/one, B/one", told, StringComparison.Ordinal);
        Assert.Equal("B/one", two["B/one"].ToString());
    }

    [Fact]
    public void AReadingPrintsItselfAndABoundSaysThatItIsOne()
    {
        Assert.Matches(@"^\d+\.\d dB \(\d+\.\d to \d+\.\d dB, 95 %\)$", Demo["A01"].At(100e6).ToString());
        Assert.Matches(@"^at least \d+\.\d dB$", Demo["A01"].At(1e9).ToString());
        Assert.IsType<ShieldingReading.AtLeast>(Demo["A01"].At(1e9));
    }

    [Fact]
    public void TheNearestFrequencyAnswersAndOneOutsideIsRefusedWithTheBand()
    {
        ShieldingReading[] all = [.. Demo["A01"].Curve.Readings];
        double between = (all[4].Evidence.At.Value * 0.4) + (all[5].Evidence.At.Value * 0.6);
        Assert.Equal(all[5], Demo["A01"].At(between));
        string told = Assert.Throws<ArgumentOutOfRangeException>(() => Demo["A01"].At(29e6)).Message;
        Assert.Contains("30000000 to 1000000000 Hz", told, StringComparison.Ordinal);
    }

    [Fact]
    public void AnotherConfidenceGivesOtherLimits()
    {
        Measurement wider = Measurement.Of(Commands.Shell.Demo, plan => plan with { Confidence = new(0.99) });
        var usual = (ShieldingReading.Measured)Demo["A01"].At(100e6);
        var strict = (ShieldingReading.Measured)wider["A01"].At(100e6);
        Assert.True(strict.Shielding.Low < usual.Shielding.Low && strict.Shielding.High > usual.Shielding.High);
        Assert.EndsWith("99 %)", strict.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void AFolderThatIsNotThereIsNamedWithWhatToDo()
    {
        var told = Assert.Throws<UnreadableCampaignException>(() => Measurement.Of("gone"));
        Assert.Contains("gone", told.Message, StringComparison.Ordinal);
        Assert.Contains("there is no such folder", told.Message, StringComparison.Ordinal);
        Assert.Contains("name the folder that holds", told.Message, StringComparison.Ordinal);
        Assert.Single(told.Faults);
    }

    [Fact]
    public void NoNameAtAllIsAnErrorOfTheCaller() => Assert.Throws<ArgumentException>(() => Measurement.Of(" "));

    [Fact]
    public void AFaultOfAFileNamesFileAndLine()
    {
        using var scratch = new ScratchFolder();
        scratch.With("c/floor/f.csv", "frequency_hz,level_dbm\n1e6,-90\n2e6,x\n3e6,-91\n");
        var told = Assert.Throws<UnreadableCampaignException>(() => Measurement.Of(Path.Combine(scratch.Path, "c")));
        Assert.Contains("floor/f.csv:3", told.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AChartOfAnotherKindIsRefused()
    {
        string told = Assert.Throws<ArgumentException>(() => Demo["A01"].DrawShielding("a01.gif")).Message;
        Assert.Contains(".svg or .png", told, StringComparison.Ordinal);
    }
}
