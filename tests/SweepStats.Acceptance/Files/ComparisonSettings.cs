using SweepStats.Bands;
using SweepStats.Files;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Results;
using SweepStats.Quantities;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>
/// What campaign.toml and sweeps.csv say for the comparison of lots and specimens: named bands, [lots], [choice] and the user's
/// own columns.
/// </summary>
public sealed class ComparisonSettings : IDisposable
{
    private const string Choice =
        "[choice]\nlower_is_better = [\"Price\"]\nhigher_is_better = [\"strength\"]\nshown = [\"Supplier\", \"width\"]\n";
    private const string Header = "file,role,width,lot,PRICE,specimen,supplier,exclude,strength\n";
    private const string Reference = "reference/r1.csv,reference,,,,,,,\n";

    private readonly ScratchFolder _folder = new();

    public ComparisonSettings() => _folder.WithUsualSweeps()
        .With("covered/A/A1/c2.csv", Level(-44)).With("covered/A/A2/c1.csv", Level(-46)).With("covered/B/B1/c1.csv", Level(-48))
        .With("covered/B/A2/c1.csv", Level(-49));

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void EveryKeyReachesThePlan()
    {
        AnalysisPlan plan = Good(
            """
            [[named_band]]
            name = "low"
            start_hz = 30e6
            stop_hz = 45e6
            [lots]
            same_within_db = 0.5
            share = 0.9
            [choice]
            yardstick = "B/A2"
            [[named_band]]
            name = "one frequency"
            start_hz = 50e6
            stop_hz = 50e6
            """).Plan;
        Assert.Equal([new NamedBand("low", Band(30e6, 45e6)), new NamedBand("one frequency", Band(50e6, 50e6))],
            plan.NamedBands.AsEnumerable());
        Assert.Equal((0.5, 0.9), (plan.Lots.MarginDb, plan.Lots.Share));
        Assert.Equal(new SpecimenName("B", "A2"), plan.Choice.Yardstick);
    }

    [Fact]
    public void WhatIsLeftOutHasTheDefaultsOfThePlan()
    {
        var defaults = new AnalysisPlan();
        foreach (string text in new[] { "", "[lots]\n[choice]\n" })
        {
            CampaignReading reading = Good(text);
            Assert.Equal((defaults.Lots, 0), (reading.Plan.Lots, reading.Plan.NamedBands.Length));
            Assert.Null(reading.Plan.Choice.Yardstick);
            Assert.Empty(reading.Plan.Choice.LowerIsBetter.AddRange(reading.Plan.Choice.HigherIsBetter)
                .AddRange(reading.Plan.Choice.Shown));
            Assert.Empty(reading.Campaign!.Properties);
        }
    }

    [Theory]
    [InlineData("B1", "B/B1")]
    [InlineData("A/A2", "A/A2")]
    public void AYardstickIsNamedByItsSpecimenAloneWhereOnlyOneLotHasIt(string text, string name) =>
        Assert.Equal(name, Good($"[choice]\nyardstick = \"{text}\"\n").Plan.Choice.Yardstick.ToString());

    [Theory]
    [InlineData("A2", "may be one of 2 specimens", "write its lot too: A/A2, B/A2")]
    [InlineData("b/b1", "is no covered specimen in use (did you mean 'B/B1'?)", "name one of A/A1, A/A2, B/A2, B/B1")]
    [InlineData("b1", "(did you mean 'B1'?)", "name one of A/A1")]
    [InlineData("B/A1", "is no covered specimen in use", "name one of A/A1")]
    public void AYardstickThatCannotBeToldIsRefused(string text, string problem, string remedy) =>
        AssertFault(Bad($"[choice]\nyardstick = \"{text}\"\n"), ("campaign.toml", 2), problem, remedy);

    [Fact]
    public void AYardstickWhoseSweepsAreAllExcludedIsRefused()
    {
        ManifestOf("file,role,lot,specimen,exclude\nreference/r1.csv,reference,,,\ncovered/A/A1/c1.csv,covered,A,A1,\n"
            + "covered/B/B1/c1.csv,covered,B,B1,torn\n");
        AssertFault(Bad("[choice]\nyardstick = \"B1\"\n"), ("campaign.toml", 2), "is no covered specimen in use",
            "name one of A/A1");
    }

    [Fact]
    public void AYardstickWhoseFileCannotBeReadIsNotCalledMistyped()
    {
        _folder.With("covered/B/B1/c1.csv", "nothing\n").With("campaign.toml", "[choice]\nyardstick = \"B1\"\n");
        Assert.Equal("covered/B/B1/c1.csv", Assert.Single(_folder.Read().Faults).File);
        AssertFault(_folder.Read(keepGoing: true), ("campaign.toml", 2), "is no covered specimen in use", "name one of A/A1");
    }

    [Theory]
    [InlineData(41e6, 49e6, "no analysed frequency lies in the band 'x', 41000000 to 49000000 Hz",
        "the nearest analysed frequency is 40000000 Hz")]
    [InlineData(50.00001e6, 60e6, "no analysed frequency", "is 50000000 Hz")]
    [InlineData(30, 45, "no analysed frequency", "frequencies are in Hz: did you mean 30e6?")]
    public void ANamedBandHoldsAnAnalysedFrequency(double start, double stop, string problem, string remedy) =>
        AssertFault(
            Bad(FormattableString.Invariant($"\n[[named_band]]\nname = \"x\"\nstart_hz = {start:R}\nstop_hz = {stop:R}\n")),
            ("campaign.toml", 2), problem, remedy);

    [Fact]
    public void ANamedBandIsHeldAgainstTheStatedBandAndTheSweepsInUse()
    {
        const string Named = "[[named_band]]\nname = \"x\"\nstart_hz = 30e6\nstop_hz = 35e6\n";
        AssertFault(Bad("[band]\nstart_hz = 35e6\n" + Named), ("campaign.toml", 3), "no analysed frequency lies in the band 'x'",
            "is 40000000 Hz");
        _folder.With("covered/A/A3/c1.csv", "frequency_hz,level_dbm\n40000000,-41\n50000000,-42\n");
        AssertFault(Bad(Named), ("campaign.toml", 1), "no analysed frequency lies in the band 'x'", "is 40000000 Hz");
    }

    [Fact]
    public void TwelveNamedBandsAreEnough()
    {
        string Bands(int count) => string.Concat(Enumerable.Range(1, count)
            .Select(i => $"[[named_band]]\nname = \"{i}\"\nstart_hz = 30e6\nstop_hz = 40e6\n"));
        Assert.Equal(12, Good(Bands(12)).Plan.NamedBands.Length);
        AssertFault(Bad(Bands(13)), ("campaign.toml", 49), "more than 12 named bands", "keep those that matter");
    }

    [Fact]
    public void TheUsersOwnColumnsTellOfTheSpecimens()
    {
        // A cell may stand in any row of its specimen, in an excluded one too, and again where it says the same.
        ManifestOf(Header + Reference
            + "covered/B/B1/c1.csv,covered,1.40 m,B,9.5,B1,\"north, west\",,\ncovered/A/A1/c1.csv,covered,,A,,A1,south,,7\n"
            + "covered/A/A1/c2.csv,covered,,A,12.50,A1,south,torn,7\n");
        SpecimenName first = new("A", "A1"), second = new("B", "B1");
        CampaignReading reading = Good(Choice);
        Assert.Equal(
            [
                new(first, "Price", "12.50", 12.5), new(first, "strength", "7", 7), new(first, "Supplier", "south", null),
                new(second, "Price", "9.5", 9.5), new(second, "Supplier", "north, west", null),
                new(second, "width", "1.40 m", null),
            ],
            reading.Campaign!.Properties.AsEnumerable());
        Assert.Equal("Price", Assert.Single(reading.Plan.Choice.LowerIsBetter));
        Assert.Equal("strength", Assert.Single(reading.Plan.Choice.HigherIsBetter));
        Assert.Equal(["Supplier", "width"], reading.Plan.Choice.Shown.AsEnumerable());
    }

    [Theory]
    [InlineData("covered/A/A1/c1.csv,covered,,A,12,A1,,,\ncovered/A/A1/c2.csv,covered,,A,12.0,A1,,,\n", 4,
        "the column 'Price' says '12.0' of A/A1, and '12' in line 3", "leave one of them empty")]
    [InlineData("floor/f.csv,floor,,,12,,,,\n", 3, "the column 'Price' is filled for a floor sweep",
        "rows of covered sweeps alone")]
    [InlineData("covered/A/A1/c1.csv,covered,,A,\"12,5\",A1,,,\n", 3, "'12,5' in the column 'Price' is not a number",
        "with a decimal point")]
    [InlineData("covered/A/A1/c1.csv,covered,,A,,A1,,,1e999\n", 3, "'1e999' in the column 'strength' is not a number",
        "under shown")]
    [InlineData("covered/A/A1/c1.csv,covered,,A,,A1,a\u0007b,,\n", 3, "the cell of 'Supplier' holds control characters",
        "shorten or correct it")]
    public void ABadCellIsRefusedWithItsLine(string rows, int line, string problem, string remedy)
    {
        _folder.With("floor/f.csv", Level(-90));
        ManifestOf(Header + Reference + rows);
        AssertFault(Bad(Choice), ("sweeps.csv", line), problem, remedy);
    }

    [Theory]
    [InlineData("[choice]\nshown = [\"a\",\n \"A\"]\n", 3, "the column 'A' is named twice under [choice]", "keep it once")]
    [InlineData("[choice]\nlower_is_better = [\"a\"]\nhigher_is_better = [\"a\"]\n", 3, "the column 'a' is named twice",
        "in one of lower_is_better, higher_is_better and shown")]
    [InlineData("[choice]\nshown = [\"Taken_At\"]\n", 2, "has a meaning of its own", "a column of your own")]
    [InlineData("[choice]\nshown = [\"\\u0007\"]\n", 2, "the name of a column in choice.shown holds control characters",
        "correct it")]
    [InlineData("[choice]\nshown = [7]\n", 2, "choice.shown is not a list of texts", "[\"one\", \"another\"]")]
    [InlineData("[choice]\nshown = [\"price\"]\n", 2, "the column 'price' is named under [choice], and sweeps.csv has none of "
        + "that name", "add it there, or take its name away")]
    public void ABadNameOfAColumnIsRefusedWithItsLine(string text, int line, string problem, string remedy)
    {
        ManifestOf("file,role,lot,specimen\nreference/r1.csv,reference,,\ncovered/A/A1/c1.csv,covered,A,A1\n");
        AssertFault(Bad(text), ("campaign.toml", line), problem, remedy);
    }

    [Fact]
    public void AColumnThatNoRowCanFillIsMissed()
    {
        AssertFault(Bad(Choice), ("campaign.toml", 2), "the column 'Price' is named under [choice], and there is no sweeps.csv",
            "take its name away");
        foreach (string empty in new[] { Header, "file,role\n", "# nothing yet\n" })
        {
            ManifestOf(empty);
            AssertFault(Bad(Choice), ("campaign.toml", 2), "and sweeps.csv lists no sweeps",
                "list the sweeps in sweeps.csv, with that column");
        }
    }

    [Fact]
    public void AColumnThatNobodyNamedStaysAFault()
    {
        ManifestOf(Header.Replace("width", "widht", StringComparison.Ordinal) + Reference);
        CampaignReading reading = Bad(Choice);
        AssertFault(reading, ("sweeps.csv", 1), "'widht' is not a column (did you mean 'width'?)",
            "a column of your own is named under [choice] or [lots] in campaign.toml");
        AssertFault(reading, ("campaign.toml", 4), "the column 'width' is named under [choice]", "add it there");
    }

    [Fact]
    public void TheSummaryTellsOfAllOfIt()
    {
        ManifestOf(Header + Reference + "covered/A/A1/c1.csv,covered,,A,12,A1,,,\ncovered/B/B1/c1.csv,covered,,B,,B1,,,\n");
        CampaignReading reading =
            Good(Choice + "yardstick = \"B1\"\n[lots]\nsame_within_db = 2\n[[named_band]]\nname = \"low\"\nstart_hz = "
                + "30e6\nstop_hz = 45e6\n");
        using var stream = new MemoryStream();
        var context = new SummaryContext
        {
            Program = "p",
            Version = "1",
            GeneratedAt = DateTimeOffset.UnixEpoch,
            Seed = null,
            Inputs = [],
            ReportFiles = [],
            Assumptions = [],
            LeftOut = [],
        };
        SummaryJson.Write(Analysis.Run(reading.Campaign!, reading.Plan), context, stream);
        System.Text.Json.JsonElement plan = System.Text.Json.JsonDocument.Parse(stream.ToArray()).RootElement.GetProperty("plan");
        string Compact(string name) => System.Text.Json.JsonSerializer.Serialize(plan.GetProperty(name));
        Assert.Equal("[{\"name\":\"low\",\"start_hz\":30000000,\"stop_hz\":45000000}]", Compact("named_bands"));
        Assert.Equal("{\"same_within_db\":2,\"share\":0.95}", Compact("lots"));
        Assert.Equal("{\"yardstick\":\"B/B1\",\"lower_is_better\":[\"Price\"],\"higher_is_better\":[\"strength\"],\"shown\":"
            + "[\"Supplier\",\"width\"]}", Compact("choice"));
    }

    private static string Level(double db) =>
        FormattableString.Invariant($"frequency_hz,level_dbm\n30000000,{db}\n40000000,{db - 0.5}\n50000000,{db - 1.25}\n");

    private static FrequencyBand Band(double start, double stop) => new(new Hertz(start), new Hertz(stop));

    private static void AssertFault(CampaignReading reading, (string File, int Line) place, string problem, string remedy)
    {
        Assert.Null(reading.Campaign);
        ReadFault? fault = reading.Faults.FirstOrDefault(
            f => (f.File, f.Line) == place && f.Problem.Contains(problem, StringComparison.Ordinal));
        Assert.True(fault is not null, string.Join('\n', reading.Faults));
        Assert.Contains(remedy, fault.Remedy, StringComparison.Ordinal);
    }

    private void ManifestOf(string text) => _folder.With("sweeps.csv", text);

    private CampaignReading Good(string settings)
    {
        CampaignReading reading = _folder.With("campaign.toml", settings).Read();
        Assert.Equal("", string.Join('\n', reading.Faults));
        return reading;
    }

    private CampaignReading Bad(string settings) => _folder.With("campaign.toml", settings).Read();
}
