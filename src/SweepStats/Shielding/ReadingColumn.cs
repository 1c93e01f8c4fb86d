namespace SweepStats.Shielding;

/// <summary>Places of the columns that <see cref="ShieldingReadings"/> has of each specimen.</summary>
internal static class ReadingColumn
{
    public const int Covered = 0, Range = 1, Uncertainty = 2, Freedom = 3, OneSidedLow = 4, Value = 5, Low = 6, High = 7;

    public const int Count = 8;
}
