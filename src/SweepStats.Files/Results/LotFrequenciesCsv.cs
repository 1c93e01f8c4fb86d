using SweepStats.Lots;

namespace SweepStats.Files.Results;

/// <summary>lots-by-frequency.csv: one row for each lot at each frequency.</summary>
public static class LotFrequenciesCsv
{
    /// <summary>Name in the report folder.</summary>
    public const string FileName = "lots-by-frequency.csv";

    /// <summary>
    /// First line. The mean is a lower bound where mean_is is "at-least". p and the standard deviations by level belong to the
    /// frequency and stand in each of its rows; p_adjusted allows for the number of frequencies (false discovery rate). The
    /// promise holds what all specimens share, promised_between_lots_db is by the scatter of the specimens alone; confidence is
    /// the one-sided level of both. An empty cell means that there is no figure.
    /// </summary>
    public const string Header = "frequency_hz,lot,mean_db,mean_is,promised_db,capped_specimens,p,p_adjusted,sd_lot_db,"
        + "sd_specimen_db,sd_placement_db,sd_sweep_db,promised_between_lots_db,confidence";

    private static readonly VarianceLevel[] Levels =
        [VarianceLevel.Lot, VarianceLevel.Specimen, VarianceLevel.Placement, VarianceLevel.Sweep];

    /// <summary>Writes the table.</summary>
    public static void Write(AnalysisResult result, Stream to)
    {
        ArgumentNullException.ThrowIfNull(result);
        byte[][] lots = [.. result.Lots.Lots.Select(CsvRows.TextCell)];
        string confidence = ResultNumber.Exact(result.Lots.Question.Confidence.Level);
        using var rows = new CsvRows(to, Header);
        foreach (LotFrequency at in result.Lots.Frequencies)
        {
            var shared = new FrequencyCells(at);
            foreach ((byte[] name, LotPoint lot) in lots.Zip(at.Lots))
            {
                Row(rows, shared, name, lot);
                rows.Level(lot.BetweenLotsPromisedDb).Cell(lot.BetweenLotsPromisedDb is null ? "" : confidence).End();
            }
        }
    }

    private static void Row(CsvRows rows, FrequencyCells of, byte[] name, LotPoint lot)
    {
        rows.Cell(of.Frequency).Cell(name);
        rows.Level(lot.MeanDb).Cell(lot.Bound ? "at-least" : "value").Level(lot.PromisedDb).Cell(of.Capped);
        rows.Probability(of.At.Probability).Probability(of.At.Adjusted);
        foreach (double? deviation in of.Scatter)
        {
            rows.Level(deviation);
        }
    }

    /// <summary>What all lots share at a frequency, formed once.</summary>
    private sealed class FrequencyCells(LotFrequency at)
    {
        public LotFrequency At => at;

        public string Frequency { get; } = ResultNumber.Exact(at.At.Value);

        public string Capped { get; } = ResultNumber.Count(at.Capped);

        public double?[] Scatter { get; } =
            [.. Levels.Select(l => at.Scatter.Where(s => s.Level == l).Select(s => (double?)s.DeviationDb).FirstOrDefault())];
    }
}
