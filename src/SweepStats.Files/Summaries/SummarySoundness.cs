using System.Collections;
using System.Text.Json;

namespace SweepStats.Files.Summaries;

/// <summary>Whether a summary holds what its types promise: JSON lets lists hold nothing, and numbers run over.</summary>
internal static class SummarySoundness
{
    /// <param name="value">A summary, or what is in one; nothing belongs to members that may be null.</param>
    public static bool Holds(object? value) => value switch
    {
        null or string or bool or int or ulong or DateTime or DateTimeOffset => true,
        double number => double.IsFinite(number),
        JsonElement text => Holds(text),
        IReadOnlyDictionary<string, JsonElement> members => members.Values.All(Holds),
        IEnumerable list => list.Cast<object?>().All(item => item is not null && Holds(item)),
        _ => SummaryNames.Default.GetTypeInfo(value.GetType())!.Properties.All(member => Holds(member.Get?.Invoke(value))),
    };

    // Half a surrogate is found only where the text is asked for.
    private static bool Holds(JsonElement value)
    {
        try
        {
            _ = SummaryDifferences.Compact(value);
            return true;
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or JsonException)
        {
            return false;
        }
    }
}
