using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Sweeps that are compared were taken with different receiver settings.</summary>
internal sealed class SettingsChanged : ICheck
{
    // Words as they are typed: "RMS" and "rms" are one detector. What the source does comes last: it is no setting of the
    // receiver.
    private static readonly Setting[] Compared =
    [
        new("resolution bandwidth", s => s.Settings.ResolutionBandwidthHz is { } hz ? Hertz(hz) : null),
        new("input attenuation", s => s.Settings.AttenuationDb is { } db ? Amount.Db(db) : null),
        new("detector", s => s.Settings.Detector?.Trim().ToLowerInvariant()),
        new("trace mode", s => s.Settings.TraceMode?.Trim().ToLowerInvariant()),
        new("preamplifier", s => s.Settings.Preamplifier?.Trim().ToLowerInvariant()),
        new("source power", s => s.Settings.SourcePowerDbm is { } dbm ? string.Create(Amount.Print, $"{dbm:0.##} dBm") : null),
    ];

    /// <inheritdoc/>
    public string Code => "settings-changed";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) =>
        AreStated(seen, Compared) || seen.Campaign.Used().Count(s => s.SourceDbm is not null) > 1 ? null
        : "the files state no settings"
            + (seen.Curves.Any(c => c.Readings.Counted(ShieldingState.Capped) > 0)
                ? "; only whether covered noise lies under the floor was looked at" : string.Empty);

    /// <inheritdoc/>
    public string? LeftBecause(Evidence seen) => UntestedBecause(seen) is not null || AreStated(seen, Compared[..^1]) ? null
        : "the source level is stated, but no setting of the receiver";

    private static bool AreStated(Evidence seen, Setting[] settings)
    {
        List<Sweep> sweeps = [.. seen.Campaign.Used()];
        return settings.Any(c => sweeps.Count(s => c.Of(s) is not null) > 1);
    }

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        var sweeps = seen.Campaign.Used().ToList();
        foreach ((string name, Func<Sweep, object?> of) in Compared)
        {
            var stated = sweeps.Select(s => (s.Role, Value: of(s))).Where(s => s.Value is not null).ToList();
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
                Basis = string.Create(Amount.Print, $"{stated.Select(s => s.Value).Distinct().Count()} different values; "
                    + $"{stated.Count} of {sweeps.Count} sweeps state "
                    + $"one{(shift == 0 ? string.Empty : "; 10 lg of the ratio of the bandwidths")}."),
                NextStep = "Take floor, reference and covered with the same source and receiver settings.",
            };
        }

        foreach (Finding finding in SourceLevelChange.Of(seen, Code).Concat(BelowFloor(seen)))
        {
            yield return finding;
        }
    }

    // Signal only adds to noise: covered levels that lie under the floor on average mean that the floor belongs to other
    // settings.
    private IEnumerable<Finding> BelowFloor(Evidence seen)
    {
        const double MoreThanDriftDb = 2;
        foreach (ShieldingCurve curve in seen.Curves)
        {
            bool InFloor(int f)
            {
                ReadingMark mark = curve.Readings.Mark(f);
                bool hidden = mark.State == ShieldingState.Capped
                    || (mark.State == ShieldingState.Overloaded && mark.HiddenByFloor);
                return hidden && mark is { Ambient: false, HiddenBehindPlate: false } && !curve.Readings[f].Evidence.LeakageRules;
            }

            double[] under = [.. Enumerable.Range(0, curve.Readings.Length).Where(InFloor)
                .Select(f => curve.Readings[f].Evidence.FloorDb!.Value - curve.Readings[f].Evidence.CoveredDb)];
            if (seen.Floor is not { } floor || under.Length == 0)
            {
                continue;
            }

            double chance = 5 * floor.Noise.Max(n => n.LogStandardDeviation) / Math.Sqrt((double)curve.SweepCount * under.Length);
            double mean = Sample.Mean(under);
            if (mean > Math.Max(MoreThanDriftDb, chance))
            {
                yield return new Finding
                {
                    Code = Code,
                    Severity = Severity.Fault,
                    Bias = Checks.Bias.Unknown,
                    Role = SweepRole.Floor,
                    Specimen = curve.Name,
                    Where = Stretches.Where(seen.Campaign.Grid, InFloor),
                    Size = new Decibels(mean),
                    Message = $"Where the covered level is in the noise it lies {Amount.Db(mean)} under the floor on average: "
                        + "noise alone cannot do that, so this is not the floor of these sweeps and the bounds that rest on it "
                        + "do not hold.",
                    Basis = string.Create(Amount.Print,
                        $"Mean over {under.Length} frequencies and {curve.SweepCount} sweeps {mean:0.00} dB under the floor; "
                            + $"chance allows {chance:0.00} dB (5 standard errors of the noise), drift {MoreThanDriftDb:0} dB."),
                    Misleads = true,
                    NextStep = MistakenFloor.NextStep(seen),
                };
            }
        }
    }

    private static string Hertz(double hertz) => string.Create(Amount.Print, $"{hertz:0.###} Hz");

    private sealed record Setting(string Name, Func<Sweep, object?> Of);
}
