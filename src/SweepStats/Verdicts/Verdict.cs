using SweepStats.Bands;
using SweepStats.Sweeps;

namespace SweepStats.Verdicts;

/// <summary>Whether the measurement can be trusted.</summary>
public enum Trust
{
    /// <summary>No warning and no fault, and every doubt that matters was tested.</summary>
    Trustworthy,

    /// <summary>Warnings limit what may be claimed, or a doubt that matters could not be tested.</summary>
    Limited,

    /// <summary>A fault stands against every claim.</summary>
    Untrustworthy,
}

/// <summary>How a measurement, or its reading at one frequency, stands to the requirement.</summary>
public enum RequirementOutcome
{
    /// <summary>
    /// The lower limit is at or above the requirement, and the guard band where one is stated, at every frequency of every
    /// specimen.
    /// </summary>
    Meets,

    /// <summary>
    /// Somewhere the upper limit is below the requirement, also after allowing for the number of frequencies looked at; a single
    /// frequency allows for none.
    /// </summary>
    Fails,

    /// <summary>
    /// The requirement, or the guard band over it, lies inside an interval: more repeats narrow what scatter makes of it.
    /// </summary>
    Undecided,

    /// <summary>Somewhere the set-up cannot see as far as the requirement.</summary>
    CannotTell,
}

/// <summary>How one specimen stands to the requirement, taken by itself.</summary>
/// <param name="Name">Which specimen.</param>
/// <param name="Outcome">How it stands.</param>
public sealed record SpecimenOutcome(SpecimenName Name, RequirementOutcome Outcome)
{
    /// <summary>Each frequency by itself, in grid order; null where nothing is asked.</summary>
    public FrequencyDecisions Frequencies { get; init; } = FrequencyDecisions.None;

    /// <summary>
    /// The frequency where it is least probable that the requirement is met; null where no probability is known.
    /// </summary>
    public FrequencyDecision? LeastProbable =>
        Frequencies.Where(d => d?.Probability is not null).MinBy(d => (d!.Probability!.Value.Least, d.Probability.Value.Most));

    /// <summary>How many frequencies have an outcome.</summary>
    public int Count(RequirementOutcome outcome) => Frequencies.Counted(outcome);
}

/// <summary>The answer. Immutable.</summary>
/// <param name="Trust">Whether the measurement can be trusted.</param>
/// <param name="Requirement">How all specimens together stand to the requirement; null where none was stated.</param>
/// <param name="Specimens">Each specimen by itself, by lot and name; empty where no requirement was stated.</param>
public sealed record Verdict(Trust Trust, RequirementOutcome? Requirement, ImmutableArray<SpecimenOutcome> Specimens)
{
    /// <summary>Doubts that matter and that nothing in the campaign could test.</summary>
    public ImmutableArray<UntestedDoubt> Untested { get; init; } = [];

    /// <summary>
    /// Codes of the findings that could overturn what the figures say of the requirement, so that it cannot be told.
    /// </summary>
    public ImmutableArray<string> OverturnedBy { get; init; } = [];

    /// <summary>
    /// The verdict as a program may take it: under a fault nothing is shown to meet the requirement, whatever the figures say.
    /// </summary>
    /// <returns>This very verdict where there is no fault.</returns>
    public Verdict AsRelied() => Trust != Trust.Untrustworthy ? this
        : this with { Requirement = Relied(Requirement), Specimens = [.. Specimens.Select(Relied)] };

    /// <summary>
    /// The outcome of anything else in the measurement, such as specimens of one age, as a program may take it.
    /// </summary>
    public RequirementOutcome? Relied(RequirementOutcome? outcome) =>
        Trust == Trust.Untrustworthy && outcome == RequirementOutcome.Meets ? RequirementOutcome.CannotTell : outcome;

    /// <summary>Share of the band that meets the requirement, as a program may take it; null under a fault.</summary>
    public BandFigure? ShareMeeting(BandStatement band) => Trust == Trust.Untrustworthy ? null : band.ShareMeeting;

    private SpecimenOutcome Relied(SpecimenOutcome specimen) =>
        new(specimen.Name, Relied(specimen.Outcome)!.Value) { Frequencies = specimen.Frequencies.WithoutMeeting() };
}
