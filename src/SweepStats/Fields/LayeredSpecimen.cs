using SweepStats.Alignment;
using SweepStats.Lots;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Fields;

/// <summary>A specimen that states of how many layers it is.</summary>
/// <param name="Curve">Its shielding.</param>
/// <param name="Sweeps">What repeats of it.</param>
/// <param name="Layers">How many, from 1.</param>
internal sealed record LayeredSpecimen(ShieldingCurve Curve, SpecimenSweeps Sweeps, int Layers)
{
    /// <summary>Null where it states none.</summary>
    public static LayeredSpecimen? Of(ShieldingCurve curve, SpecimenBlock block, ImmutableArray<SpecimenProperty> properties)
    {
        SpecimenProperty? stated = properties.FirstOrDefault(p => p.Specimen == curve.Name && IsLayers(p.Name));
        return stated?.Number is { } layers && LayerComparer.IsCount(layers)
            ? new LayeredSpecimen(curve, SpecimenSweeps.Of(block, curve), (int)layers) : null;
    }

    private static bool IsLayers(string name) => name.Equals(LayerComparer.Property, StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether its shielding is bounded from both sides at a frequency.</summary>
    public bool IsBounded(int f) =>
        !Sweeps.Bounds[f] && Curve.Readings[f] is not ShieldingReading.Unreadable
            && Curve.Readings[f].Evidence is { Ambient: false, ReferenceInFloor: false };
}
