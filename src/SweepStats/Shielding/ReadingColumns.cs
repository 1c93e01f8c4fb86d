using SweepStats.Statistics;
using SweepStats.Storage;

namespace SweepStats.Shielding;

/// <summary>Takes up the readings of a specimen, frequency by frequency, as columns of numbers.</summary>
/// <remarks>What all specimens have in common is taken from the surroundings, which the readings must agree with.</remarks>
internal sealed class ReadingColumns
{
    private readonly ReadingSurroundings _beside;
    private readonly double[][] _numbers;
    private readonly ReadingMark[] _marks;
    private readonly NumberedTexts _reasons = new(ReadingMark.MostReasons);
    private Confidence _confidence = Confidence.NinetyFive;
    private bool _measured;

    /// <summary>Columns for as many readings as the surroundings have frequencies.</summary>
    public ReadingColumns(ReadingSurroundings beside)
    {
        _beside = beside;
        _marks = new ReadingMark[beside.Hertz.Length];
        _numbers = [.. Enumerable.Range(0, ReadingColumn.Count).Select(_ => new double[_marks.Length])];
    }

    /// <summary>Puts a reading into its place.</summary>
    /// <exception cref="ArgumentException">
    /// Its interval has another confidence than those before, or too many readings have a reason of their own.
    /// </exception>
    public void Put(int f, ShieldingReading reading)
    {
        _marks[f] =
            new ReadingMark(reading, reading is ShieldingReading.Unreadable { Reason: var reason } ? _reasons.Of(reason) : 0);
        ReadingEvidence evidence = reading.Evidence;
        _numbers[ReadingColumn.Covered][f] = evidence.CoveredDb;
        _numbers[ReadingColumn.Range][f] = evidence.DynamicRange?.Value ?? double.NaN;
        _numbers[ReadingColumn.Uncertainty][f] = evidence.StandardUncertaintyDb ?? double.NaN;
        _numbers[ReadingColumn.Freedom][f] = evidence.DegreesOfFreedom ?? double.NaN;
        _numbers[ReadingColumn.OneSidedLow][f] = evidence.OneSidedLow?.Value ?? double.NaN;
        (double low, double high) = (double.NaN, double.NaN);
        if (reading is ShieldingReading.Measured { Shielding: var shielding })
        {
            (low, high) = (shielding.Low.Value, shielding.High.Value);
            Agree(f, shielding.Confidence);
        }

        _numbers[ReadingColumn.Value][f] = reading.ValueOrBound.Value;
        (_numbers[ReadingColumn.Low][f], _numbers[ReadingColumn.High][f]) = (low, high);
    }

    /// <summary>All readings, once each has its place.</summary>
    /// <param name="store">Where they are kept.</param>
    public ShieldingReadings Kept(RowStore store) => new(_beside, store.Keep(_numbers), _marks, _reasons.All, _confidence);

    private void Agree(int f, Confidence confidence)
    {
        if (_measured && confidence != _confidence)
        {
            throw new ArgumentException(FormattableString.Invariant(
                $"The interval at point {f + 1} has a confidence of {confidence}, those before have {_confidence}."));
        }

        (_measured, _confidence) = (true, confidence);
    }
}
