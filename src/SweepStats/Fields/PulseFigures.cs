namespace SweepStats.Fields;

/// <summary>What is told of a pulse. Immutable.</summary>
/// <param name="PeakVoltsPerMetre">Largest size of the field, in V/m.</param>
/// <param name="PeakSeconds">When, from the start of the pulse in front.</param>
/// <param name="RiseSeconds">From a tenth to nine tenths of the peak, each reached for the first time.</param>
/// <param name="WidthSeconds">How long the field stays above half of the peak about the peak.</param>
/// <param name="JoulesPerSquareMetre">Energy of a plane wave of this field through an area, in J/m².</param>
public sealed record PulseFigures(
    double PeakVoltsPerMetre, double PeakSeconds, double RiseSeconds, double WidthSeconds, double JoulesPerSquareMetre);
