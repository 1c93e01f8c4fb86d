namespace SweepStats.Files.Traces.Tables;

/// <summary>What the line above a table says it is, where that is no level whatever the columns are called.</summary>
internal static class BlockLabel
{
    /// <summary>
    /// The label of a limit, a phase, a correction or a list of markers; null for any other. A label with a colon states a
    /// setting, and numbers beside a loss are its size.
    /// </summary>
    /// <param name="label">The label, as it stands before the names of the columns.</param>
    /// <param name="unitStated">Whether its columns state a unit of level: then a phase is one of the work.</param>
    public static string? Other(string label, bool unitStated)
    {
        string text = label.TrimEnd(' ', ':');
        if (text.AsSpan().IndexOfAny(':', '=') >= 0)
        {
            return null;
        }

        var name = ColumnName.Of(text);
        bool marker = text.StartsWith("marker", StringComparison.OrdinalIgnoreCase)
            || text.StartsWith("peak list", StringComparison.OrdinalIgnoreCase);
        return name.IsLimit || marker || (!unitStated && name.Part == ComplexPart.Phase)
            || (name.IsCorrection && !text.Any(char.IsAsciiDigit)) ? text : null;
    }
}
