using SweepStats.Receivers;

namespace SweepStats.Files.Results;

/// <summary>receiver.csv: one row an observation, in the order of the input.</summary>
public static class ReceiverCsv
{
    /// <summary>Name in the report folder.</summary>
    public const string FileName = "receiver.csv";

    /// <summary>
    /// First line. Bound is what the observation shows alone, one-sided: at_least_db where silent, at_most_db where heard; empty
    /// where it is no evidence, and why then stands under evidence.
    /// </summary>
    public const string Header =
        "name,frequency_hz,receiver,source,level_dbm,level_from,level_u_db,sensitivity_dbm,sensitivity_u_db,margin_db,"
            + "margin_u_db,uncovered_heard,covered_heard,evidence,at_least_db,at_most_db";

    /// <summary>Writes the table.</summary>
    /// <param name="test">The test.</param>
    /// <param name="to">Where to.</param>
    public static void Write(ReceiverTest test, Stream to)
    {
        ArgumentNullException.ThrowIfNull(test);
        using var rows = new CsvRows(to, Header);
        foreach (ReceiverObservation o in test.Observations)
        {
            rows.Text(o.Name).Exact(o.Frequency?.Value).Text(o.Receiver).Text(o.Source);
            rows.Level(o.Level.Dbm).Cell(Origin(o.Level.Origin)).Level(Stated(o, o.Level.UncertaintyDb)).Level(o.SensitivityDbm)
                .Level(Stated(o, o.SensitivityUncertaintyDb));
            rows.Level(o.MarginDb).Level(Stated(o, o.UncertaintyDb)).YesNo(o.HeardUncovered).YesNo(o.HeardCovered);
            SingleBound alone = SingleBound.Of(o, test.Question.Confidence);
            rows.Cell(Evidence(o.State)).Level(alone.AtLeastDb).Level(alone.AtMostDb).End();
        }
    }

    private static double? Stated(ReceiverObservation observation, double uncertainty) =>
        observation.IsUncertaintyStated ? uncertainty : null;

    internal static string Origin(LevelOrigin origin) => origin switch
    {
        LevelOrigin.Field => "field",
        LevelOrigin.FreeSpace => "free-space",
        _ => "level",
    };

    internal static string Evidence(EvidenceState state) => state switch
    {
        EvidenceState.Uncontrolled => "not-stated-heard-uncovered",
        EvidenceState.SilentUncovered => "silent-uncovered",
        EvidenceState.BelowSensitivity => "level-below-sensitivity",
        _ => "counts",
    };
}
