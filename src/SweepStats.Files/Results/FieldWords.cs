using SweepStats.Fields;

namespace SweepStats.Files.Results;

/// <summary>Words of the result files for fields and pulses.</summary>
internal static class FieldWords
{
    /// <summary>Why nothing is claimed; null where something is.</summary>
    public static string? Of(FieldSilence? silence) => silence switch
    {
        FieldSilence.Untrustworthy => "untrustworthy",
        FieldSilence.NoClaim => "no-shielding-claimed",
        FieldSilence.FindingOfUnknownSize => "finding-of-unknown-size",
        FieldSilence.NothingKeptOut => "nothing-kept-out",
        _ => null,
    };

    /// <summary>What is taken outside the band.</summary>
    public static string Of(OutsideBand outside) => outside switch
    {
        OutsideBand.Hold => "hold",
        OutsideBand.Slope => "slope",
        _ => "none",
    };
}
