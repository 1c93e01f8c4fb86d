using System.Globalization;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Whether the receiver follows the level has not been tested: no linearity sweeps at two source levels or more.</summary>
internal sealed class LinearityUntested : ICheck
{
    public string Code => "linearity-untested";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Linearity is not null)
        {
            yield break;
        }

        yield return new Finding
        {
            Code = Code,
            Severity = Severity.Note,
            Message = "Whether the receiver was overloaded by the reference was not tested: an overloaded receiver reads too low, and the shielding comes out too small."
                + Unusable(Taken(seen)),
            Basis = Basis(seen),
            NextStep = Unstated(Taken(seen)) ? "Write the source level of each linearity sweep into sweeps.csv, column source_dbm."
                : "Step the source down by 10 dB and see that the reference follows by 10 dB; if it does not, put attenuation before the receiver.",
        };
    }

    private static List<Sweep> Taken(Evidence seen) => [.. seen.Campaign.SetAside.Where(s => s.Role == SweepRole.Linearity)];

    private static bool Unstated(List<Sweep> sweeps) => sweeps.Count > 0 && sweeps.TrueForAll(s => s.SourceDbm is null);

    private static string Unusable(List<Sweep> sweeps) => sweeps.Count == 0 ? string.Empty
        : Unstated(sweeps) ? " Linearity sweeps are there, but nothing says at which source levels they were taken."
        : " Linearity sweeps are there, but not at two source levels, on the frequencies of the other sweeps and clear of the noise.";

    private static string Basis(Evidence seen)
    {
        List<Sweep> sweeps = Taken(seen);
        int levels = sweeps.Where(s => s.SourceDbm is not null).Select(s => s.SourceDbm).Distinct().Count();
        return string.Create(CultureInfo.InvariantCulture, $"{sweeps.Count} linearity sweeps at {levels} stated source levels; two levels are needed.");
    }
}
