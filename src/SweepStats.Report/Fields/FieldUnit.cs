namespace SweepStats.Report.Fields;

/// <summary>The unit that a field strength is told in.</summary>
/// <param name="VoltsPerMetre">Its size.</param>
/// <param name="Symbol">Its symbol.</param>
internal readonly record struct FieldUnit(double VoltsPerMetre, string Symbol)
{
    private static readonly FieldUnit[] All =
        [new(1e3, "kV/m"), new(1, "V/m"), new(1e-3, "mV/m"), new(1e-6, "µV/m"), new(1e-9, "nV/m"), new(1e-12, "pV/m")];

    /// <summary>The one in which a field is 1 or more.</summary>
    public static FieldUnit Of(double voltsPerMetre) => All.FirstOrDefault(u => voltsPerMetre >= u.VoltsPerMetre, All[^1]);
}
