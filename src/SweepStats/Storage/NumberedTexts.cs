namespace SweepStats.Storage;

/// <summary>Few different texts, each kept once and named by its number in many places. For one thread.</summary>
/// <param name="most">How many different ones have room.</param>
internal sealed class NumberedTexts(int most)
{
    private readonly List<string> _texts = [];

    /// <summary>All so far, by their numbers.</summary>
    public ImmutableArray<string> All => [.. _texts];

    /// <summary>The number of a text, from 0 on in the order of their coming.</summary>
    /// <exception cref="ArgumentException">It is one more than have room.</exception>
    public int Of(string text)
    {
        int number = _texts.IndexOf(text);
        if (number >= 0)
        {
            return number;
        }

        if (_texts.Count == most)
        {
            throw new ArgumentException(
                $"There are more than {most} different texts; say the same in the same words.", nameof(text));
        }

        _texts.Add(text);
        return _texts.Count - 1;
    }
}
