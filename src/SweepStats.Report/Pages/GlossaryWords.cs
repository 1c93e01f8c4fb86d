namespace SweepStats.Report.Pages;

/// <summary>Ten words, for a reader who meets them here for the first time.</summary>
public static class GlossaryWords
{
    /// <summary>Heading of the ten words.</summary>
    public const string GlossaryHeading = "Ten words";

    /// <summary>
    /// The words that all pages, files and commands use, in the terms of the standards named beside them. The guide has the same.
    /// </summary>
    public static IReadOnlyList<Term> Glossary { get; } =
    [
        new("Shielding effectiveness (SE)",
            "Level without the specimen less level with it, in dB, of the signal alone (IEEE Std 299). 20 dB keep out "
                + "90 % of the field and 99 % of the power."),
        new("Noise floor",
            "What the receiver shows when the source is off. A signal below it is not seen, and one near it reads too "
                + "high."),
        new("Usable dynamic range",
            "The largest shielding that this set-up can bound from both sides."),
        new("Specimen",
            "One item that is measured: one cut of cloth, one panel. To take it off and put it back is a new placement "
                + "of it."),
        new("Lot",
            "Specimens that are made under the same conditions (ISO 3534-2), such as those of one roll."),
        new("Repeatability, reproducibility",
            "How closely results agree under the same conditions, and when specimen, placement or set-up change (ISO "
                + "5725-1). Both are standard deviations in dB."),
        new("Standard uncertainty",
            "The standard deviation that stands for how well a value is known (JCGM 100). From repeats it has degrees "
                + "of freedom: few repeats, few of them."),
        new("Confidence interval",
            "From such a lower to such an upper limit, that of 100 intervals 95 hold the true value, at a level of 95 "
                + "% (ISO 3534-1). With a lower limit alone it is a bound, printed ≥."),
        new("Statistical tolerance limit",
            "What a share of a lot reaches, specimens that nobody measured included, with the stated confidence (ISO "
                + "16269-6)."),
        new("Conformity",
            "What a limit says of a requirement (JCGM 106): meets, fails, undecided where the interval holds the "
                + "requirement, or cannot be told where only a bound below it is known. A guard band asks for more, to be "
                + "safe."),
    ];
}
