using SweepStats.Receivers;

namespace SweepStats.Files.Results;

/// <summary>receiver-groups.csv: one row for stations of like frequency, lowest first.</summary>
public static class ReceiverGroupsCsv
{
    /// <summary>Name in the report folder.</summary>
    public const string FileName = "receiver-groups.csv";

    /// <summary>First line. at_least_db and at_most_db are one-sided, se_low_db to se_high_db two-sided, both at the confidence;
    /// empty where there is none.</summary>
    public const string Header =
        "start_hz,stop_hz,observations,silent,largest_silent_db,smallest_heard_db,at_least_db,at_most_db,se_low_db,se_high_db,"
            + "confidence,claim_db,claim,contradiction,next_margin_db";

    /// <summary>Writes the table.</summary>
    /// <param name="test">The test.</param>
    /// <param name="to">Where to.</param>
    public static void Write(ReceiverTest test, Stream to)
    {
        ArgumentNullException.ThrowIfNull(test);
        using var rows = new CsvRows(to, Header);
        foreach (StationGroup g in test.Groups)
        {
            rows.Band(g.Band).Count(g.Observations.Length).Count(g.Observations.Count(o => !o.HeardCovered));
            rows.Level(g.LargestSilentDb).Level(g.SmallestHeardDb).Level(g.AtLeast?.Value).Level(g.AtMost?.Value);
            rows.Interval(g.Interval).Exact(test.Question.Confidence.Level);
            rows.Level(test.Question.Claim?.Value).Cell(Claim(g.Claim) ?? "").YesNo(g.Contradiction is not null)
                .Level(g.Next?.MarginDb ?? g.SupportingMarginDb).End();
        }
    }

    internal static string? Claim(ClaimOutcome? outcome) => outcome switch
    {
        ClaimOutcome.Supported => "supported",
        ClaimOutcome.Refuted => "refuted",
        ClaimOutcome.NotShown => "not-shown",
        _ => null,
    };
}
