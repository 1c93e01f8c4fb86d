namespace SweepStats.Files.Traces.Touchstone;

/// <summary>What a Touchstone file says above its data.</summary>
/// <param name="Ports">Number of ports, 1 to 4.</param>
/// <param name="Options">The option line.</param>
/// <param name="FirstLine">Index of the line from which on data may stand.</param>
internal sealed record TouchstoneHeader(int Ports, TouchstoneOptions Options, int FirstLine)
{
    /// <summary>Whether the file has the keywords of version 2.</summary>
    public bool HasKeywords { get; init; }

    /// <summary>Which elements are listed.</summary>
    public TouchstoneMatrix Matrix { get; init; }

    /// <summary>Whether the matrix runs column by column, as that of two ports does unless version 2 says otherwise.</summary>
    public bool ColumnByColumn { get; init; }

    /// <summary>Points that the file announces; null where it does not.</summary>
    public int? Points { get; init; }

    /// <summary>Rows of noise parameters that the file announces; null where it does not.</summary>
    public int? NoiseRows { get; init; }
}
