using SweepStats.Files;
using SweepStats.Files.Campaigns;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>Whoever does what a message about a campaign says must not end in another reading that is wrong and silent.</summary>
public sealed class CampaignRemedies : IDisposable
{
    private const string Plain = ScratchFolder.Traces.Plain;

    private readonly ScratchFolder _folder = new ScratchFolder().WithUsualSweeps();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("[band]\nstart_hz = 225e6\nstop_hz = 400")]
    [InlineData("[[named_band]]\nname = \"a\"\nstart_hz = 225e6\nstop_hz = 400")]
    public void ABandThatEndsBeforeItsStartMayLackItsPowerOfTen(string text) =>
        Assert.Equal("correct start_hz and stop_hz; both are in Hz (400 MHz is 400e6)", Fault(text).Remedy);

    [Theory]
    [InlineData("31e6", "32e6", "widen or move it")]
    [InlineData("0", "40", "widen or move it")]
    [InlineData("30", "45", "did you mean 30e6?")]
    public void AnotherUnitIsGuessedForABandBesideTheSweepsOnly(string start, string stop, string remedy)
    {
        string said = Fault($"[[named_band]]\nname = \"a\"\nstart_hz = {start}\nstop_hz = {stop}").Remedy;
        Assert.Contains(remedy, said, StringComparison.Ordinal);
        Assert.DoesNotContain("0e6", said.Replace("30e6", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    // 99 MHz to 101 MHz lies between two frequencies of the sweeps; times 1000 it would hold one.
    [Fact]
    public void ABandBetweenTwoFrequenciesOfTheSweepsIsInTheRightUnit()
    {
        const string Wide = "frequency_hz,level_dbm\n1000000,-40\n99000000000,-41\n100000000000,-42\n";
        _folder.With("reference/r1.csv", Wide).With("covered/A/A1/c1.csv", Wide);
        string remedy = Fault("[[named_band]]\nname = \"a\"\nstart_hz = 99e6\nstop_hz = 101e6").Remedy;
        Assert.StartsWith("widen or move it", remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void ARequirementIsNotMovedToWhereTheSweepsAre() =>
        Assert.Equal(
            "take the sweeps over the band of the requirement, widen [band], or correct the frequencies (Hz)",
            Fault("[requirement]\npoints = [[7, 20], [8, 40]]").Remedy);

    [Fact]
    public void AFolderOfFoldersIsALot()
    {
        using ScratchFolder loose = new ScratchFolder().With("reference/r1.csv", Plain)
            .With("covered/A1/s1.csv", Plain).With("covered/A1/p1/s2.csv", Plain);
        Assert.Equal(
            "put all into covered/<lot>/A1/<placement>/: a folder right under covered that holds folders is read as a lot",
            Assert.Single(loose.Read().Faults).Remedy);
    }

    [Theory]
    [InlineData("off")]
    [InlineData("none")]
    public void WithoutAveragingTheDetectorIsTold(string word) =>
        Assert.Equal(
            "write the detector: \"power\" for RMS, \"peak\" for peak, \"sample\" only for a sample detector",
            Fault($"averaging = \"{word}\"").Remedy);

    [Fact]
    public void ASectionOfTheFloorThatSaysNothingNeedsNoNumber() =>
        Assert.Equal(
            "campaign.toml:1: section [floor] says nothing; add taken or stability_db, or remove it",
            Fault("[floor]").ToString());

    [Theory]
    [InlineData("c.s2p", "# MHz S DB R 50\n30 -1 0 -20 0 -21 0 -2 0\n40 -1 0 -20 0 -22 0 -2 0\n", "S22", true)]
    [InlineData("c.s1p", "# MHz S DB R 50\n30 -1 0\n40 -1 0\n", "S11", true)]
    [InlineData("c.s2p", "# MHz S DB R 50\n30 -1 0 -20 0 -21 0 -2 0\n40 -1 0 -20 0 -22 0 -2 0\n", "S12", false)]
    public void AReflectionNamedForACoveredSweepIsToldOf(string name, string text, string column, bool told)
    {
        using ScratchFolder folder = new ScratchFolder().With("reference/r." + name[^3..], text).With("covered/" + name, text)
            .With("sweeps.csv",
            $"file,role,specimen,column\nreference/r.{name[^3..]},reference,,{column}\ncovered/{name},covered,A1,{column}\n");
        CampaignReading reading = folder.Read();
        Assert.Empty(reading.Faults);
        string line = $"covered/{name}: {column} is a reflection: it says nothing of the attenuation of the specimen";
        Assert.Equal(told, reading.Assumptions.Contains(line));
    }

    [Fact]
    public void ANumberThatIsTooLargeIsCalledSo() =>
        Assert.Equal("the number is too large", Fault("[setup]\nrbw_hz = 99999999999999999999999").Problem);

    private ReadFault Fault(string text) => Assert.Single(_folder.With("campaign.toml", text + "\n").Read().Faults);
}
