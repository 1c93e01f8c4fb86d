using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Power and log averaging read noise differently; without knowing which, intervals near the floor hold both.</summary>
internal sealed class AveragingUnknown : ICheck
{
    public string Code => "averaging-unknown";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Floor is not null && seen.Averaging == Averaging.Unknown)
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Note,
                Message = "How the receiver averages is not stated: intervals near the floor are wide enough for power averaging and for log averaging.",
                NextStep = "Set averaging in campaign.toml to \"power\" (RMS detector or power average), \"log\" (log or video average) or \"sample\"; intervals near the floor become narrower.",
            };
        }
    }
}
