namespace SweepStats.Sweeps;

/// <summary>
/// Something known of a specimen that is not a level, such as its price. It is shown, and weighed where it is a number.
/// </summary>
/// <param name="Specimen">Which specimen.</param>
/// <param name="Name">What it is, in the user's word.</param>
/// <param name="Text">As written.</param>
/// <param name="Number">The same as a number; null where it is none.</param>
public sealed record SpecimenProperty(SpecimenName Specimen, string Name, string Text, double? Number);
