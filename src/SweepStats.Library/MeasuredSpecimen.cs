using System.Globalization;
using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Report;
using SweepStats.Report.Drawing;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Library;

/// <summary>One specimen of an analysed campaign. Immutable.</summary>
public sealed class MeasuredSpecimen
{
    private readonly AnalysisResult _result;

    internal MeasuredSpecimen(AnalysisResult result, ShieldingCurve curve) => (_result, Curve) = (result, curve);

    /// <summary>Its lot and its own name.</summary>
    public SpecimenName Name => Curve.Name;

    /// <summary>Its shielding at every analysed frequency.</summary>
    public ShieldingCurve Curve { get; }

    /// <summary>What holds over the analysed band.</summary>
    public BandStatement Band => _result.Bands.Single(b => b.Name == Name);

    /// <summary>Its shielding at the analysed frequency that lies nearest; the reading says which.</summary>
    /// <param name="hertz">Frequency in Hz, within the analysed band.</param>
    /// <returns>A value with its interval, a bound, an indication without interval, or the reason why nothing is known.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The frequency lies outside the analysed band.</exception>
    public ShieldingReading At(double hertz)
    {
        FrequencyBand band = _result.Campaign.Grid.Band;
        if (!band.Contains(new Hertz(hertz)))
        {
            throw new ArgumentOutOfRangeException(nameof(hertz), hertz, string.Create(
                CultureInfo.InvariantCulture, $"Analysed are {band.Start.Value:R} to {band.Stop.Value:R} Hz."));
        }

        return Curve.Readings.MinBy(r => Math.Abs(r.Evidence.At.Value - hertz))!;
    }

    /// <summary>Draws its shielding over frequency with intervals and bounds, as the report shows it.</summary>
    /// <param name="path">Where to: a file that ends in .svg or .png; one that is there is replaced.</param>
    /// <exception cref="ArgumentException">The ending is another.</exception>
    /// <exception cref="PngUnavailableException">PNG was asked for and this machine cannot draw text.</exception>
    public void DrawShielding(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        byte[] picture = Path.GetExtension(path).ToUpperInvariant() switch
        {
            ".SVG" => ShieldingPicture.Svg(_result, Curve),
            ".PNG" => ShieldingPicture.Png(_result, Curve),
            var other => throw new ArgumentException($"A chart is written as .svg or .png, not as '{other}'.", nameof(path)),
        };
        File.WriteAllBytes(path, picture);
    }

    /// <inheritdoc/>
    public override string ToString() => Name.ToString();
}
