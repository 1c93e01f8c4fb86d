using System.Globalization;
using SweepStats.Floor;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Power and log averaging read noise differently; without knowing which, intervals near the floor hold both.</summary>
internal sealed class AveragingUnknown : ICheck
{
    public string Code => "averaging-unknown";

    public string? UntestedBecause(Evidence seen) => Lacking.Floor(seen);

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Floor is { } floor && seen.Averaging == Averaging.Unknown)
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Note,
                Message = "How the receiver averages is not stated: intervals near the floor are wide enough for power averaging and for log averaging.",
                Basis = floor.Source == FloorSource.Declared
                    ? "Nothing is stated, and a declared floor has no scatter to tell by: a single look and endless averaging are both reckoned with."
                    : string.Create(CultureInfo.InvariantCulture, $"Nothing is stated; floor readings scatter by {floor.ReadingDeviationDb:0.00} dB, which is {floor.Noise[0].Looks:0.#} looks averaged in power or {floor.Noise[^1].LogAverages:0.#} averaged in dB."),
                NextStep = "Set averaging in campaign.toml to \"power\" (RMS detector or power average), \"log\" (log or video average) or \"sample\"; intervals near the floor become narrower.",
            };
        }
    }
}
