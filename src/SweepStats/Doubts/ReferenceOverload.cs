using SweepStats.Alignment;
using SweepStats.Clipping;
using SweepStats.Linearity;
using SweepStats.Quantities;

namespace SweepStats.Doubts;

/// <summary>Where the receiver is shown, or stated, not to follow the level of a campaign's sweeps.</summary>
/// <remarks>
/// Three signs: readings that are cut off, a received level from which on the receiver falls short of the source, and a stated
/// maximum input. In each case a level above reads too low, and the higher it is the more: the difference of two levels comes out
/// too small.
/// </remarks>
internal sealed class ReferenceOverload
{
    private readonly CampaignClipping _clipped;
    private readonly ImmutableArray<double> _reference;
    private readonly double _shortFrom;
    private readonly double _mostDb;

    /// <param name="campaign">The sweeps.</param>
    /// <param name="clipped">Readings that are cut off.</param>
    /// <param name="linearity">How the receiver follows the source; null where that was not tested.</param>
    /// <param name="maximumInputDbm">Highest input level that the receiver shows without error, where stated.</param>
    public ReferenceOverload(AlignedCampaign campaign, CampaignClipping clipped, LinearityCurve? linearity,
        double? maximumInputDbm)
    {
        _clipped = clipped;
        _reference = campaign.Reference.Means();
        _shortFrom = linearity?.OverloadedFromDb ?? double.PositiveInfinity;
        _mostDb = campaign.Scale == LevelScale.DecibelMilliwatts ? maximumInputDbm ?? double.PositiveInfinity
            : double.PositiveInfinity;
    }

    /// <summary>Whether the reference reads too low at a frequency.</summary>
    public bool OfReference(int f) => _clipped.Reference.IsAt(f) || _reference[f] >= _shortFrom || _reference[f] > _mostDb;

    /// <summary>
    /// Where a specimen's covered level reads too low by more than the reference does, so that no lower bound holds; one a
    /// frequency.
    /// </summary>
    /// <remarks>
    /// Where both fall short the reference, being higher, falls shorter. A covered level above the reference turns that round.
    /// </remarks>
    public ImmutableArray<bool> OfCovered(SpecimenBlock specimen, int number)
    {
        ImmutableArray<double> covered = specimen.Block.Means();
        return [.. covered.Select((level, f) =>
            _clipped.Covered[number].IsAt(f) || (level >= _reference[f] && (level >= _shortFrom || level > _mostDb)))];
    }

    /// <summary>Where a specimen's sweeps stand at the bottom of what is shown; empty where there are none.</summary>
    public ImmutableArray<bool> AtBottom(int number) => _clipped.CoveredAtBottom[number];
}
