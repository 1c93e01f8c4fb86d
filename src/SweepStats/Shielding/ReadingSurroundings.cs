namespace SweepStats.Shielding;

/// <summary>What the readings of all specimens have in common, one a frequency. Immutable.</summary>
/// <param name="Hertz">Frequencies.</param>
/// <param name="ReferenceDb">Reference levels.</param>
/// <param name="FloorDb">Floor levels as shown; not a number where none is known.</param>
/// <param name="LeakageDb">Levels of what comes on another way; not a number where nothing shows.</param>
internal sealed record ReadingSurroundings(double[] Hertz, double[] ReferenceDb, double[] FloorDb, double[] LeakageDb)
{
    /// <summary>Those of given readings.</summary>
    public static ReadingSurroundings Of(ReadOnlySpan<ShieldingReading> readings)
    {
        var columns = new ReadingSurroundings(
            new double[readings.Length], new double[readings.Length], new double[readings.Length], new double[readings.Length]);
        for (int f = 0; f < readings.Length; f++)
        {
            ReadingEvidence evidence = readings[f].Evidence;
            columns.Hertz[f] = evidence.At.Value;
            columns.ReferenceDb[f] = evidence.ReferenceDb;
            columns.FloorDb[f] = evidence.FloorDb ?? double.NaN;
            columns.LeakageDb[f] = evidence.LeakageDb ?? double.NaN;
        }

        return columns;
    }
}
