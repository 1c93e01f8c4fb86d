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
            .YesNo(left.Outside == question.Outside);
        Left(rows, left);
        rows.Count(pulse.BoundCount).Count(pulse.UnknownCount).Significant(question.Pulse.PeakVoltsPerMetre)
            .Probability(question.Pulse.EnergyShareIn(result.Campaign.Grid)).Exact(result.Plan.Confidence.Level)
            .Cell(FieldWords.Of(left.Silence) ?? "").End();
    }

    private static void Left(CsvRows rows, PulseLeft left)
    {
        rows.Significant(left.Estimate?.PeakVoltsPerMetre);
        rows.Significant(left.PeakLimits?.Low).Significant(left.PeakLimits?.High);
        rows.Significant(left.PeakAtMost).Significant(left.PeakWithMeasuredPhase);
        rows.Significant(left.Estimate?.RiseSeconds).Significant(left.Estimate?.WidthSeconds);
        rows.Significant(left.Estimate?.JoulesPerSquareMetre).Significant(left.EnergyAtMost);
    }
}
