namespace SweepStats.Statistics;

/// <summary>Some values of a row.</summary>
internal static class RowPart
{
    /// <summary>The values at some places, in their order.</summary>
    public static double[] At(ReadOnlySpan<double> row, ReadOnlySpan<int> places)
    {
        var taken = new double[places.Length];
        for (int p = 0; p < taken.Length; p++)
        {
            taken[p] = row[places[p]];
        }

        return taken;
    }
}
