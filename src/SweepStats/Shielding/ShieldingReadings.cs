using System.Collections;
using System.Runtime.CompilerServices;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Storage;

namespace SweepStats.Shielding;

/// <summary>The readings of one specimen, one a frequency, in grid order. Immutable.</summary>
/// <remarks>
/// They lie as columns of numbers, and a reading is made when it is asked for: a campaign has one for each specimen and
/// frequency.
/// </remarks>
[CollectionBuilder(typeof(ShieldingReadings), nameof(Of))]
public sealed class ShieldingReadings : IReadOnlyList<ShieldingReading>
{
    private readonly ReadingSurroundings _beside;
    private readonly KeptRows _numbers;
    private readonly ReadingMark[] _marks;
    private readonly ImmutableArray<string> _reasons;
    private readonly Confidence _confidence;

    internal ShieldingReadings(ReadingSurroundings beside, KeptRows numbers, ReadingMark[] marks, ImmutableArray<string> reasons,
        Confidence confidence)
    {
        (_beside, _numbers, _marks, _reasons, _confidence) = (beside, numbers, marks, reasons, confidence);
    }

    /// <summary>Takes up given readings.</summary>
    /// <exception cref="ArgumentException">Their intervals have different confidences.</exception>
    public static ShieldingReadings Of(ReadOnlySpan<ShieldingReading> readings)
    {
        var columns = new ReadingColumns(ReadingSurroundings.Of(readings));
        for (int f = 0; f < readings.Length; f++)
        {
            columns.Put(f, readings[f]);
        }

        return columns.Kept(RowStore.InMemory);
    }

    /// <summary>Number of frequencies.</summary>
    public int Length => _marks.Length;

    int IReadOnlyCollection<ShieldingReading>.Count => Length;

    /// <summary>The reading at a place of the grid.</summary>
    public ShieldingReading this[int index] => Made(_numbers.Rows, index);

    /// <inheritdoc/>
    public IEnumerator<ShieldingReading> GetEnumerator()
    {
        double[][] numbers = _numbers.Rows;
        for (int f = 0; f < Length; f++)
        {
            yield return Made(numbers, f);
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>The readings that are no values, or not in the clear: only of those is anything asked why.</summary>
    public IEnumerable<ShieldingReading> Bounded()
    {
        for (int f = 0; f < Length; f++)
        {
            if (_marks[f].State is not (ShieldingState.Clear or ShieldingState.NearFloor))
            {
                yield return this[f];
            }
        }
    }

    /// <summary>How many readings stand so to the floor.</summary>
    public int Counted(ShieldingState state)
    {
        int count = 0;
        foreach (ReadingMark mark in _marks)
        {
            count += mark.State == state ? 1 : 0;
        }

        return count;
    }

    /// <summary>The frequency at a place of the grid.</summary>
    public Hertz At(int place) => new(_beside.Hertz[place]);

    /// <summary>Whether some reading is of a kind.</summary>
    internal bool Has(ReadingKind kind) => Array.Exists(_marks, m => m.Kind == kind);

    /// <summary>Whether every reading is of a kind.</summary>
    internal bool AreAll(ReadingKind kind) => Array.TrueForAll(_marks, m => m.Kind == kind);

    /// <summary>
    /// What a plain mean takes for the shielding: reference less covered level, noise and capped readings as they come. In dB.
    /// </summary>
    internal double PlainDb(int f) => _beside.ReferenceDb[f] - CoveredDb[f];

    /// <summary>What is known at a frequency, without its numbers.</summary>
    internal ReadingMark Mark(int f) => _marks[f];

    /// <summary>The shielding in dB, or the bound that it lies above; not a number where nothing is known.</summary>
    internal ReadOnlySpan<double> ValuesDb => _numbers.Rows[ReadingColumn.Value];

    /// <summary>Lower ends of the intervals in dB; not a number where there is none.</summary>
    internal ReadOnlySpan<double> LowDb => _numbers.Rows[ReadingColumn.Low];

    /// <summary>Upper ends of the intervals in dB; not a number where there is none.</summary>
    internal ReadOnlySpan<double> HighDb => _numbers.Rows[ReadingColumn.High];

    /// <summary>Reference levels in dB.</summary>
    internal ReadOnlySpan<double> ReferenceDb => _beside.ReferenceDb;

    /// <summary>Covered levels in dB.</summary>
    internal ReadOnlySpan<double> CoveredDb => _numbers.Rows[ReadingColumn.Covered];

    /// <summary>Covered levels in dB at neighbouring frequencies, without the rest.</summary>
    /// <param name="first">Place of the first frequency.</param>
    /// <param name="levels">Room for them.</param>
    internal void ReadCoveredDb(int first, Span<double> levels) => _numbers.Read(ReadingColumn.Covered, first, levels);

    /// <summary>One-sided lower limits in dB; not a number where none can be had.</summary>
    internal ReadOnlySpan<double> OneSidedLowDb => _numbers.Rows[ReadingColumn.OneSidedLow];

    /// <summary>Whether the shielding at a frequency is only known from below, or not at all.</summary>
    internal bool IsBound(int f) => _marks[f].Kind switch
    {
        ReadingKind.Measured => false,
        // Without a floor a single sweep too is known from below only.
        ReadingKind.Unrepeated => _marks[f].State == ShieldingState.NoFloor,
        _ => true,
    };

    private ShieldingReading Made(double[][] numbers, int f)
    {
        ReadingMark mark = _marks[f];
        ReadingEvidence evidence = Evidence(numbers, mark, f);
        var value = new Decibels(numbers[ReadingColumn.Value][f]);
        return mark.Kind switch
        {
            ReadingKind.Measured => new ShieldingReading.Measured(mark.State, evidence, new ShieldingEstimate(value,
                new Decibels(numbers[ReadingColumn.Low][f]), new Decibels(numbers[ReadingColumn.High][f]), _confidence)),
            ReadingKind.AtLeast => new ShieldingReading.AtLeast(mark.State, evidence, value),
            ReadingKind.Unrepeated => new ShieldingReading.Unrepeated(mark.State, evidence, value),
            _ => new ShieldingReading.Unreadable(mark.State, evidence, _reasons[mark.Reason]),
        };
    }

    private ReadingEvidence Evidence(double[][] numbers, ReadingMark mark, int f) => new()
    {
        At = new Hertz(_beside.Hertz[f]),
        ReferenceDb = _beside.ReferenceDb[f],
        CoveredDb = numbers[ReadingColumn.Covered][f],
        FloorDb = ReadingEvidence.Known(_beside.FloorDb[f]),
        LeakageDb = ReadingEvidence.Known(_beside.LeakageDb[f]),
        DynamicRange = InDecibels(numbers[ReadingColumn.Range][f]),
        StandardUncertaintyDb = ReadingEvidence.Known(numbers[ReadingColumn.Uncertainty][f]),
        DegreesOfFreedom = ReadingEvidence.Known(numbers[ReadingColumn.Freedom][f]),
        OneSidedLow = InDecibels(numbers[ReadingColumn.OneSidedLow][f]),
        Ambient = mark.Ambient,
        HiddenByFloor = mark.HiddenByFloor,
        HiddenBehindPlate = mark.HiddenBehindPlate,
        Doubts = mark.Doubts,
        ReferenceInFloor = mark.ReferenceInFloor,
    };

    private static Decibels? InDecibels(double value) => double.IsNaN(value) ? null : new Decibels(value);
}
