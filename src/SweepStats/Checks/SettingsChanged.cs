using System.Globalization;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Sweeps that are compared were taken with different receiver settings.</summary>
internal sealed class SettingsChanged : ICheck
{
    private static readonly (string Name, Func<ReceiverSettings, object?> Of)[] Compared =
    [
        ("resolution bandwidth", s => s.ResolutionBandwidthHz is { } hz ? Hertz(hz) : null),
        ("input attenuation", s => s.AttenuationDb is { } db ? Amount.Db(db) : null),
        ("detector", s => s.Detector),
    ];

    public string Code => "settings-changed";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        var sweeps = Used(seen).ToList();
        foreach ((string name, Func<ReceiverSettings, object?> of) in Compared)
        {
            var stated = sweeps.Select(s => (s.Role, Value: of(s.Settings))).Where(s => s.Value is not null).ToList();
            if (stated.Select(s => s.Value).Distinct().Count() < 2)
            {
                continue;
            }

            string list = string.Join(", ", stated.GroupBy(s => s.Role).OrderBy(g => g.Key)
                .Select(g => $"{g.Key.ToString().ToLowerInvariant()} {string.Join(" and ", g.Select(s => s.Value).Distinct())}"));
            double shift = name == Compared[0].Name ? seen.Floor?.BandwidthShiftDb ?? 0 : 0;
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Warning,
                Size = shift == 0 ? null : new Decibels(shift),
                Message = $"The {name} differs between sweeps that are compared: {list}."
                    + (shift == 0 ? string.Empty : $" The floor was moved by {Amount.Db(shift)}, as noise goes with bandwidth."),
                NextStep = "Take floor, reference and covered with the same receiver settings.",
            };
        }
    }

    private static IEnumerable<Sweep> Used(Evidence seen) =>
        (seen.Campaign.Floor?.Sweeps ?? []).Concat(seen.Campaign.Reference.Sweeps).Concat(seen.Campaign.Covered.SelectMany(c => c.Block.Sweeps));

    private static string Hertz(double hertz) => string.Create(CultureInfo.InvariantCulture, $"{hertz:0.###} Hz");
}
