namespace SweepStats.Fields;

/// <summary>What a pulse becomes behind a curve.</summary>
/// <param name="Samples">Field over time in V/m.</param>
/// <param name="Amplitudes">Size of its spectrum at each frequency of the <see cref="PulseGrid"/>, each with its mirror
/// image.</param>
/// <param name="PeakWeights">
/// By how many dB the peak falls for each dB of shielding more at a frequency; a dB more at all of them lowers it by one. Some
/// are negative: what is taken away there had taken off the peak. Holds for the minimum phase.
/// </param>
internal sealed record FilteredPulse(double[] Samples, double[] Amplitudes, double[] PeakWeights);
