using SweepStats.Bands;

namespace SweepStats.Fields;

/// <summary>What further layers of one cloth add to the mean shielding over the band. Immutable.</summary>
/// <param name="Lot">The cloth.</param>
/// <param name="From">Layers before.</param>
/// <param name="To">Layers after.</param>
public sealed record LayerStep(string Lot, int From, int To)
{
    /// <summary>Mean shielding before in dB, over the frequencies compared; null where there is none.</summary>
    public double? BeforeDb { get; init; }

    /// <summary>
    /// What is added, in dB; without limits where nothing repeats, empty where there is no frequency to compare at.
    /// </summary>
    public BandFigure AddedDb { get; init; }

    /// <summary>Frequencies compared: every specimen of both is bounded from both sides.</summary>
    public int PointCount { get; init; }

    /// <summary>Frequencies left out since a specimen is known there from below alone, or the reading makes no sense.</summary>
    public int LeftOut { get; init; }
}
