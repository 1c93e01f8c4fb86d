namespace SweepStats.Fields;

/// <summary>Why nothing is claimed of the field behind a specimen.</summary>
public enum FieldSilence
{
    /// <summary>A fault stands against the measurement.</summary>
    Untrustworthy,

    /// <summary>At some measured frequency no lower limit of the shielding is known.</summary>
    NoClaim,

    /// <summary>What a finding tells of could lower the shielding by an amount that nobody knows.</summary>
    FindingOfUnknownSize,

    /// <summary>The lower limit of the shielding is not above 0 dB: it is not shown that anything is kept out.</summary>
    NothingKeptOut,
}
