namespace SweepStats.Files.Traces.Preambles;

/// <summary>An end of the range of a sweep as lines above the data state it.</summary>
/// <param name="Number">The frequency, as stated or as it follows from centre and span.</param>
/// <param name="Rounding">
/// How far the statement may be off by the digits it is written in, in the unit of <paramref name="Number"/>.
/// </param>
/// <param name="Line">The line that states it, from 1.</param>
internal sealed record StatedBound(StatedNumber Number, double Rounding, int Line)
{
    /// <summary>In Hz; null where no unit is stated, here or as the usual one.</summary>
    public double? Hertz(FrequencyUnit? usual = null) => Number.Hertz(usual);

    /// <summary>The rounding in Hz.</summary>
    public double RoundingHertz(FrequencyUnit? usual = null) =>
        Rounding * Math.Pow(10,
            ((Number.Unit.Length == 0 ? usual : FrequencyUnits.Parse(Number.Unit)) ?? FrequencyUnit.Hertz).Exponent());

    /// <summary>How messages show it.</summary>
    public string Shown => Number.Unit.Length == 0 ? Number.Digits : $"{Number.Digits} {Number.Unit}";
}
