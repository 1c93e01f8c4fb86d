using SweepStats.Fields;

namespace SweepStats.Files.Results;

/// <summary>
/// field.csv: what is left of a pulse, one row for each specimen under each assumption on the frequencies outside the band.
/// </summary>
public static class FieldCsv
{
    /// <summary>Name in the report folder.</summary>
    public const string FileName = "field.csv";

    /// <summary>
    /// First line. outside is none, hold or slope, and asked marks the one that was asked for. Peak, rise, width and energy are
    /// estimates by the minimum phase; peak_low and peak_high are their limits at the level confidence; at_most holds whatever
    /// the phase. Where bounds stand in, only at_most is there; where that is empty, no_claim says why. An empty cell means that
    /// there is no figure.
    /// </summary>
    public const string Header =
        "lot,specimen,outside,asked,peak_v_per_m,peak_low_v_per_m,peak_high_v_per_m,peak_at_most_v_per_m,"
        + "peak_measured_phase_v_per_m,"
        + "rise_s,width_s,energy_j_per_m2,energy_at_most_j_per_m2,bound_points,unknown_points,pulse_peak_v_per_m,"
        + "pulse_energy_in_band,confidence,no_claim";

    /// <summary>Writes the table.</summary>
    public static void Write(AnalysisResult result, Stream to)
    {
        ArgumentNullException.ThrowIfNull(result);
        using var rows = new CsvRows(to, Header);
        foreach (ResidualPulse pulse in result.Pulses)
        {
            foreach (OutsideBand outside in Enum.GetValues<OutsideBand>())
            {
                Row(rows, result, pulse, pulse.Under(outside) ?? new PulseLeft(outside) { Silence = pulse.Silence });
            }
        }
    }

    private static void Row(CsvRows rows, AnalysisResult result, ResidualPulse pulse, PulseLeft left)
    {
        PulseQuestion question = result.Plan.Pulse;
        rows.Text(pulse.Name.Lot).Text(pulse.Name.Specimen).Cell(FieldWords.Of(left.Outside))
            .Cell(left.Outside == question.Outside ? "yes" : "no");
        rows.Cell(Number(left.Estimate?.PeakVoltsPerMetre)).Cell(Number(left.PeakLimits?.Low))
            .Cell(Number(left.PeakLimits?.High));
        rows.Cell(Number(left.PeakAtMost)).Cell(Number(left.PeakWithMeasuredPhase));
        rows.Cell(Number(left.Estimate?.RiseSeconds)).Cell(Number(left.Estimate?.WidthSeconds))
            .Cell(Number(left.Estimate?.JoulesPerSquareMetre)).Cell(Number(left.EnergyAtMost));
        rows.Cell(ResultNumber.Count(pulse.BoundCount)).Cell(ResultNumber.Count(pulse.UnknownCount))
            .Cell(Number(question.Pulse.PeakVoltsPerMetre));
        rows.Probability(question.Pulse.EnergyShareIn(result.Campaign.Grid));
        rows.Cell(ResultNumber.Exact(result.Plan.Confidence.Level)).Cell(FieldWords.Of(left.Silence) ?? "").End();
    }

    private static string Number(double? value) => ResultNumber.Significant(value);
}
