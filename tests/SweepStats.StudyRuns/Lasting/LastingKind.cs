namespace SweepStats.StudyRuns.Lasting;

/// <summary>What goes over from one sweep to the next.</summary>
public enum LastingKind
{
    /// <summary>At each frequency by itself.</summary>
    EachFrequency,

    /// <summary>A smooth ripple: neighbours within a fiftieth of the band go together.</summary>
    FineRipple,

    /// <summary>A smooth ripple: neighbours within a tenth of the band go together.</summary>
    WideRipple,

    /// <summary>The level of the whole sweep.</summary>
    Whole,

    /// <summary>As much of the whole sweep as of each frequency.</summary>
    WholeAndEachFrequency,

    /// <summary>Half of the variance at each frequency lasts, half is each sweep's own.</summary>
    HalfOfEachFrequency,

    /// <summary>
    /// The phase of a standing wave moves on by the same step from sweep to sweep, so that the level rises here and falls there.
    /// </summary>
    SteadyPhase,

    /// <summary>The phase of a standing wave takes a step of chance from sweep to sweep.</summary>
    WanderingPhase,
}
