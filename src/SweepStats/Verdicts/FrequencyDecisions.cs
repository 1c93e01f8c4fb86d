using System.Collections;
using System.Runtime.CompilerServices;
using SweepStats.Quantities;
using SweepStats.Storage;

namespace SweepStats.Verdicts;

/// <summary>
/// How one specimen stands to what is asked at each frequency, in grid order; null where nothing is. Immutable.
/// </summary>
/// <remarks>They lie as columns of numbers, and a decision is made when it is asked for.</remarks>
[CollectionBuilder(typeof(FrequencyDecisions), nameof(Of))]
public sealed class FrequencyDecisions : IReadOnlyList<FrequencyDecision?>
{
    private const int Frequency = 0, Required = 1, Least = 2, Most = 3, Columns = 4;

    // Codes beside those of the outcomes, which begin behind the first.
    private const byte NothingAsked = 0, NotReliedOn = byte.MaxValue;

    private readonly KeptRows _numbers;
    private readonly byte[] _outcomes;

    // Place among the codes, from 1; 0 where none could. Empty where none could anywhere.
    private readonly byte[] _overturned;
    private readonly ImmutableArray<string> _codes;

    private FrequencyDecisions(KeptRows numbers, byte[] outcomes, byte[] overturned, ImmutableArray<string> codes)
    {
        (_numbers, _outcomes, _overturned, _codes) = (numbers, outcomes, codes.IsEmpty ? [] : overturned, codes);
    }

    /// <summary>No frequencies.</summary>
    public static FrequencyDecisions None { get; } = Of([]);

    /// <summary>Takes up given decisions.</summary>
    public static FrequencyDecisions Of(ReadOnlySpan<FrequencyDecision?> decisions) => Of(decisions, RowStore.InMemory);

    /// <summary>Number of frequencies.</summary>
    public int Length => _outcomes.Length;

    int IReadOnlyCollection<FrequencyDecision?>.Count => Length;

    /// <summary>The decision at a place of the grid.</summary>
    public FrequencyDecision? this[int index] => Made(_numbers.Rows, index);

    /// <inheritdoc/>
    public IEnumerator<FrequencyDecision?> GetEnumerator()
    {
        double[][] numbers = _numbers.Rows;
        for (int f = 0; f < Length; f++)
        {
            yield return Made(numbers, f);
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>How many frequencies have an outcome.</summary>
    public int Counted(RequirementOutcome outcome)
    {
        int count = 0;
        foreach (byte code in _outcomes)
        {
            count += code != NothingAsked && OutcomeOf(code) == outcome ? 1 : 0;
        }

        return count;
    }

    /// <summary>How many frequencies something is asked at.</summary>
    public int Asked => Length - _outcomes.AsSpan().Count(NothingAsked);

    /// <summary>Codes of the findings that could overturn what the figures say somewhere.</summary>
    internal IEnumerable<string> OverturnedBy => _codes;

    internal static FrequencyDecisions Of(ReadOnlySpan<FrequencyDecision?> decisions, RowStore store)
    {
        int length = decisions.Length;
        double[][] numbers = [.. Enumerable.Range(0, Columns).Select(_ => new double[length])];
        var outcomes = new byte[length];
        var overturned = new byte[length];
        var codes = new NumberedTexts(byte.MaxValue);
        for (int f = 0; f < length; f++)
        {
            if (decisions[f] is not { } decision)
            {
                continue;
            }

            outcomes[f] = CodeOf(decision.Outcome);
            (numbers[Frequency][f], numbers[Required][f]) = (decision.At.Value, decision.Required.Value);
            numbers[Least][f] = decision.Probability?.Least ?? double.NaN;
            numbers[Most][f] = decision.Probability?.Most ?? double.NaN;
            if (decision.OverturnedBy is { } code)
            {
                overturned[f] = (byte)(codes.Of(code) + 1);
            }
        }

        return new FrequencyDecisions(store.Keep(numbers), outcomes, overturned, codes.All);
    }

    /// <summary>The same where what meets is not relied on: that cannot be told, and has no probability.</summary>
    internal FrequencyDecisions WithoutMeeting()
    {
        byte meets = CodeOf(RequirementOutcome.Meets);
        return new FrequencyDecisions(
            _numbers, Array.ConvertAll(_outcomes, code => code == meets ? NotReliedOn : code), _overturned, _codes);
    }

    private FrequencyDecision? Made(double[][] numbers, int f)
    {
        byte code = _outcomes[f];
        if (code == NothingAsked)
        {
            return null;
        }

        bool known = code != NotReliedOn && !double.IsNaN(numbers[Least][f]);
        return new FrequencyDecision(new Hertz(numbers[Frequency][f]), new Decibels(numbers[Required][f]), OutcomeOf(code),
            known ? new ConformanceProbability(numbers[Least][f], numbers[Most][f]) : null)
        {
            OverturnedBy = _codes.IsEmpty || _overturned[f] == 0 ? null : _codes[_overturned[f] - 1],
        };
    }

    private static byte CodeOf(RequirementOutcome outcome) => (byte)(NothingAsked + 1 + (int)outcome);

    private static RequirementOutcome OutcomeOf(byte code) =>
        code == NotReliedOn ? RequirementOutcome.CannotTell : (RequirementOutcome)(code - NothingAsked - 1);
}
