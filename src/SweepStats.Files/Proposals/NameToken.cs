namespace SweepStats.Files.Proposals;

/// <summary>A run of letters or of digits in a name.</summary>
/// <param name="Text">As written.</param>
/// <param name="IsNumber">Whether it is digits.</param>
/// <param name="Chunk">Which chunk it is of, counted from 0: chunks are what marks and blanks part.</param>
internal sealed record NameToken(string Text, bool IsNumber, int Chunk)
{
    /// <summary>The text in lower case, umlauts as two letters, so that "Prüfling" and "PRUEFLING" are one word.</summary>
    public string Word { get; } = Text.ToLowerInvariant()
        .Replace("ä", "ae", StringComparison.Ordinal).Replace("ö", "oe", StringComparison.Ordinal)
        .Replace("ü", "ue", StringComparison.Ordinal).Replace("ß", "ss", StringComparison.Ordinal);
}
