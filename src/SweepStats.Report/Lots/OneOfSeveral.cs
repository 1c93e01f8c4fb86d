namespace SweepStats.Report.Lots;

/// <summary>A line among those of a chart.</summary>
/// <param name="Place">Its place from 0.</param>
/// <param name="Places">How many there are.</param>
internal readonly record struct OneOfSeveral(int Place, int Places);
