namespace SweepStats.Files.Proposals;

/// <summary>A chunk of a name that no word explains.</summary>
/// <param name="Text">As written, such as "A1", "blue" or "3".</param>
internal sealed record NameChunk(string Text)
{
    private const int LongestLetters = 3;

    /// <summary>Whether it is a number and nothing else.</summary>
    public bool IsNumber => Text.All(char.IsAsciiDigit);

    /// <summary>Whether it is a short run of letters with a number behind it, as specimens are marked: "A1", "AB12". Behind a
    /// word a number may count anything.</summary>
    public bool IsMark
    {
        get
        {
            int letters = Text.TakeWhile(char.IsLetter).Count();
            return letters is >= 1 and <= LongestLetters && letters < Text.Length && char.IsAsciiDigit(Text[^1]);
        }
    }

    /// <summary>Whether it is a word with a number at its end that may count anything: "blue1".</summary>
    public bool IsCounted => !IsNumber && !IsMark && char.IsAsciiDigit(Text[^1]);
}
