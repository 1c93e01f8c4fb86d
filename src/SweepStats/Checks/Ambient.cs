using System.Globalization;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Something transmits while the source is off.</summary>
internal sealed class Ambient : ICheck
{
    public string Code => "ambient";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Floor is not { } floor)
        {
            yield break;
        }

        double single = new DetectorNoise(1).LogStandardDeviation;
        if (floor.ReadingDeviationDb > 1.15 * single)
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Warning,
                Role = SweepRole.Floor,
                Size = new Decibels(floor.ReadingDeviationDb),
                Message = $"Floor readings scatter by {Amount.Db(floor.ReadingDeviationDb)}, more than noise can (single looks scatter by {Amount.Db(single)}): something transmits now and then over much of the band.",
                Basis = string.Create(CultureInfo.InvariantCulture, $"Scatter of {floor.SweepCount} floor sweeps {floor.ReadingDeviationDb:0.00} dB, against {1.15 * single:0.00} dB: 1.15 times that of single looks."),
                NextStep = "Watch the floor for a while; find and switch off what transmits, or measure in a shielded room or at another hour.",
            };
        }

        int count = floor.Ambient.Count(a => a);
        if (count > 0)
        {
            double highest = Enumerable.Range(0, floor.Ambient.Length).Where(f => floor.Ambient[f]).Max(f => floor.LevelDb[f]);
            var quiet = Enumerable.Range(0, floor.Ambient.Length).Where(f => !floor.Ambient[f]).Select(f => floor.LevelDb[f]).Order().ToList();
            double above = quiet.Count == 0 ? 0 : highest - quiet[quiet.Count / 2];
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Warning,
                Role = SweepRole.Floor,
                Where = Stretches.Where(seen.Campaign.Grid, f => floor.Ambient[f]),
                Size = new Decibels(above),
                Message = $"With the source off there is more than noise at {Amount.OutOf(count, floor.Ambient.Length)}, up to {Amount.Db(above)} above the floor: something transmits there. A carrier beats with the signal and comes and goes, so nothing is taken out there and only a lower bound is given.",
                Basis = string.Create(CultureInfo.InvariantCulture, $"{floor.SweepCount} floor sweeps, highest {highest:0.0} dB; the limit is one that noise passes in 0.5 % of clean floors, all frequencies together."),
                NextStep = "Find and switch off the transmitter, measure in a shielded room or at another hour, or leave these frequencies out of the claim.",
            };
        }
    }
}
