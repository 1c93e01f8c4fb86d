using SweepStats.Alignment;

namespace SweepStats.Checks;

/// <summary>Sweeps on different frequencies.</summary>
internal sealed class GridMismatch : ICheck
{
    private const string SameFrequencies = "Take floor, reference and covered with the same start, stop and number of points";

    /// <inheritdoc/>
    public string Code => "grid-mismatch";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (!seen.Campaign.GridDifferences.IsEmpty)
        {
            yield return LeftOut(seen.Campaign);
        }

        if (seen.Campaign.Interpolation is { } interpolation)
        {
            yield return Interpolated(seen, interpolation);
        }
    }

    private Finding LeftOut(AlignedCampaign campaign)
    {
        GridDifference first = campaign.GridDifferences[0];
        int count = campaign.GridDifferences.Length;
        return new Finding
        {
            Code = Code,
            Severity = Severity.Warning,
            LeavesFrequenciesOut = true,
            Message = $"{Amount.Count(count, "sweep has", "sweeps have")} frequencies that others lack ({first.Sweep.Name}: "
                + $"{Amount.Count(first.PointsLeftOut, "point", "points")}); only the "
                + $"{Amount.Count(campaign.Grid.Count, "frequency", "frequencies")} that all share are analysed, nothing is "
                + "interpolated.",
            Basis = string.Create(Amount.Print, $"{campaign.GridDifferences.Sum(d => d.PointsLeftOut)} points left out in all, "
                + $"at most {campaign.GridDifferences.Max(d => d.PointsLeftOut)} of one sweep; frequencies count as the same "
                + $"within a millionth, or a twentieth of the step to the next point where that is more."),
            NextStep = $"{SameFrequencies}. For these sweeps, set interpolate = true under [band] in campaign.toml: the error "
                + "of it goes into the budget.",
        };
    }

    // Specimens on several grids each have an error of their own, which the comparison of lots takes for one that all share.
    private Finding Interpolated(Evidence seen, Interpolation interpolation)
    {
        int left = interpolation.FrequenciesLeftOut;
        string moved = interpolation.SweepCount == 0 ? "Covered sweeps go beyond the others."
            : string.Create(Amount.Print, $"{Amount.Count(interpolation.SweepCount, "sweep was", "sweeps were")} interpolated "
                + $"onto the {Amount.Count(seen.Campaign.Grid.Count, "frequency", "frequencies")} of the covered sweeps; that "
                + $"may move the shielding by up to {interpolation.HalfWidthDb:0.00} dB, which the intervals hold.");
        string gaps = left == 0 ? "" : $" {Amount.Count(left, "covered frequency is", "covered frequencies are")} left out: "
            + "other sweeps do not reach so far, or bend too much between readings.";
        string lots = interpolation.BetweenSpecimens
            ? " Specimens were measured on different frequencies: differences between lots may be off by as much." : "";
        return new Finding
        {
            Code = Code,
            Severity = left > 0 ? Severity.Warning
                : interpolation.BetweenSpecimens ? Materiality.Weight(interpolation.HalfWidthDb, seen.Curves) : Severity.Note,
            LeavesFrequenciesOut = left > 0,
            Message = $"{moved}{gaps}{lots}",
            Basis = string.Create(Amount.Print, $"Straight lines in dB between neighbouring readings, twice the bend that "
                + $"second differences of the mean levels show; frequencies with more than {Interpolation.LargestDb:0} dB are "
                + $"left out; of the floor the nearest reading is taken."),
            NextStep = $"{SameFrequencies}: a ripple of the curve that is narrower than four of its points is not seen.",
        };
    }
}
