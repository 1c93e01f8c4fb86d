namespace SweepStats.Trends;

/// <summary>What is asked at one of several frequencies.</summary>
/// <param name="RequiredDb">The shielding asked for, in dB.</param>
/// <param name="Frequencies">How many frequencies are asked about.</param>
internal readonly record struct FrequencyQuestion(double RequiredDb, int Frequencies);
