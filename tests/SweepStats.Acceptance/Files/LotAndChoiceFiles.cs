using System.Globalization;
using System.Text;
using SweepStats.Acceptance.Commands;
using SweepStats.Acceptance.Report;
using SweepStats.Bands;
using SweepStats.Choice;
using SweepStats.Files.Results;
using SweepStats.Lots;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>lots.csv, lots-by-frequency.csv and choice.csv.</summary>
public sealed class LotAndChoiceFiles
{
    private const string LotHeader = "band,start_hz,stop_hz,clear_share,lot,specimens,mean_db,mean_low_db,mean_high_db,"
        + "promised_db,promised_rank_db,plain_mean_db,shared_error_db,p,h,k,between_lots_low_db,between_lots_high_db,"
        + "promised_between_lots_db,confidence,foremost";

    private const string FrequencyHeader = "frequency_hz,lot,mean_db,mean_is,promised_db,capped_specimens,p,p_adjusted,"
        + "sd_lot_db,sd_specimen_db,sd_placement_db,sd_sweep_db,promised_between_lots_db,confidence";

    private const string ChoiceHeader =
        "band,start_hz,stop_hz,points,rank,lot,specimen,group,mean_db,mean_low_db,mean_high_db,at_least_db,capped_points,"
        + "probability_best_low,probability_best_high,"
        + "below_yardstick_db,below_yardstick_low_db,below_yardstick_high_db,dominated_by,confidence,not_ranked_because";

    [Fact]
    public void ARunWritesARowForEachLotAndSpecimenOfEachBand()
    {
        using var scratch = new ScratchFolder();
        string folder = Path.Combine(scratch.Path, "c"), report = Path.Combine(scratch.Path, "r");
        Shell.Run("rehearse", folder, "--points", "21", "--lots", "3", "--specimens", "2", "--se", "40", "--se-stop", "90");
        File.AppendAllText(Path.Combine(folder, "campaign.toml"),
            "\n[[named_band]]\nname = \"upper\"\nstart_hz = 200e6\nstop_hz = 1e9\n");
        Assert.Equal(0, Shell.Run("run", folder, "--out", report, "--quiet").Code);
        string[] Lines(string file) => File.ReadAllLines(Path.Combine(report, file));
        (string[] lots, string[] frequencies, string[] choice) =
            (Lines("lots.csv"), Lines("lots-by-frequency.csv"), Lines("choice.csv"));
        Assert.Equal((LotHeader, FrequencyHeader, ChoiceHeader), (lots[0], frequencies[0], choice[0]));
        Assert.Equal((1 + (2 * 3), 1 + (21 * 3), 1 + (2 * 6)), (lots.Length, frequencies.Length, choice.Length));
        Assert.All(new[] { lots, frequencies, choice },
            lines => Assert.All(lines, l => Assert.Equal(lines[0].Count(c => c == ','), l.Count(c => c == ','))));
        Assert.Equal(["", "", "", "upper", "upper", "upper"], lots.Skip(1).Select(l => l.Split(',')[0]));
        // Where the floor hides some specimen the mean is a bound, and no scatter is given.
        string[][] rows = [.. frequencies.Skip(1).Select(l => l.Split(','))];
        Assert.Equal(["at-least", "value"], rows.Select(r => r[3]).Distinct().Order(StringComparer.Ordinal));
        Assert.All(rows, r => Assert.Equal(r[5] == "0", r[8].Length > 0));
        Assert.All(rows.Where(r => r[5] == "0"), r => Assert.Equal("value", r[3]));
    }

    [Fact]
    public void FiguresAreThoseOfTheAnalysis()
    {
        AnalysisResult result = Samples.Run(Samples.Lots, Samples.Choosing);
        string[][] lots = Rows(s => LotsCsv.Write(result, s));
        foreach ((LotSummary lot, string[] row) in result.Lots.Bands.SelectMany(b => b.Lots).Zip(lots))
        {
            Assert.Equal(lot.Lot, row[4]);
            Assert.Equal(lot.MeanDb, Number(row[6]), 6e-5);
            Assert.Equal(lot.ToleranceLimitDb!.Value, Number(row[9]), 6e-5);
            Assert.Equal(lot.PlainMeanDb, Number(row[11]), 6e-5);
            Assert.Equal(lot.MeanIntervalDb!.Value.Low, Number(row[7]), 6e-5);
            Assert.Equal(lot.BetweenLotsIntervalDb!.Value.Low, Number(row[16]), 6e-5);
            Assert.Equal(result.Lots.Bands.First(b => b.Lots.Contains(lot)).Foremost.Contains(lot.Lot) ? "yes" : "no", row[20]);
            Assert.Equal(lot.BetweenLotsLimitDb!.Value, Number(row[18]), 6e-5);
            Assert.Equal("0.95", row[19]);
        }

        string[][] choice = Rows(s => ChoiceCsv.Write(result, s));
        BandRanking whole = result.Choice!.Bands[0];
        foreach ((RankedSpecimen specimen, string[] row) in whole.Ranking.Zip(choice))
        {
            Assert.Equal(($"{specimen.Rank}", specimen.Name.Specimen, $"{specimen.Group}"), (row[4], row[6], row[7]));
            Assert.Equal(specimen.BelowYardstickDb!.Value.Value!.Value, Number(row[15]), 6e-5);
        }

        string[] yardstick = choice[whole.Ranking.Length];
        Assert.Equal(("", "A01", "", "", ""), (yardstick[4], yardstick[6], yardstick[7], yardstick[13], yardstick[15]));
    }

    [Fact]
    public void NamesOfTheUserAreNeitherFormulasNorSeparators()
    {
        Campaign campaign = Rehearser.Draw(Samples.Small with { Lots = 2, SpecimensPerLot = 2 }).Campaign;
        campaign = campaign with
        {
            Properties =
            [new SpecimenProperty(new SpecimenName("A", "A01"), "=cost, \"net\"", "-3.50", -3.5),
                new SpecimenProperty(new SpecimenName("A", "A02"), "=cost, \"net\"", "-a, \"b\"", null)],
        };
        AnalysisResult result = Analysis.Run(campaign, Samples.Power with
        {
            NamedBands = [new NamedBand("@SUM(1), x", new FrequencyBand(new Hertz(200e6), new Hertz(1e9)))],
            Choice = new ChoiceQuestion { LowerIsBetter = ["=cost, \"net\""] },
        });
        string[] lots = Lines(s => LotsCsv.Write(result, s)), choice = Lines(s => ChoiceCsv.Write(result, s));
        Assert.Equal(2, lots.Count(l => l.StartsWith("\"'@SUM(1), x\",2", StringComparison.Ordinal)));
        Assert.Equal(4, choice.Count(l => l.StartsWith("\"'@SUM(1), x\",2", StringComparison.Ordinal)));
        Assert.Equal(ChoiceHeader + ",\"'=cost, \"\"net\"\"\"", choice[0]);
        // A number stays as typed, whatever it starts with; what is none is text.
        Assert.Equal(2, choice.Count(l => l.EndsWith(",-3.50", StringComparison.Ordinal)));
        Assert.Equal(2, choice.Count(l => l.EndsWith(",\"'-a, \"\"b\"\"\"", StringComparison.Ordinal)));
        AnalysisResult renamed = Samples.Renamed(Samples.Small with { Lots = 2 }, n => "=" + n + ",");
        Assert.All(Lines(s => LotsCsv.Write(renamed, s)).Skip(1), l => Assert.Contains(",\"'=", l, StringComparison.Ordinal));
        Assert.All(Lines(s => LotFrequenciesCsv.Write(renamed, s)).Skip(1),
            l => Assert.Contains(",\"'=", l, StringComparison.Ordinal));
        Assert.All(Lines(s => ChoiceCsv.Write(renamed, s)).Skip(1), l => Assert.Contains(",\"'=", l, StringComparison.Ordinal));
    }

    [Fact]
    public void WithoutTwoCandidatesThereIsOnlyTheFirstLine()
    {
        AnalysisResult one = Samples.Run(Samples.Small, Samples.Power);
        Assert.Equal([ChoiceHeader], Lines(s => ChoiceCsv.Write(one, s)));
        Assert.Equal(1 + 1, Lines(s => LotsCsv.Write(one, s)).Length);
    }

    [Fact]
    public void TheCultureChangesNothing()
    {
        AnalysisResult result = Samples.Run(Samples.Lots, Samples.Choosing);
        string[] All() => [.. Lines(s => LotsCsv.Write(result, s)), .. Lines(s => LotFrequenciesCsv.Write(result, s)),
            .. Lines(s => ChoiceCsv.Write(result, s))];
        string[] before = All();
        CultureInfo culture = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(before, All());
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }

    private static string[] Lines(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return Encoding.UTF8.GetString(stream.ToArray()).TrimEnd('\n').Split('\n');
    }

    private static string[][] Rows(Action<Stream> write) => [.. Lines(write).Skip(1).Select(l => l.Split(','))];

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
