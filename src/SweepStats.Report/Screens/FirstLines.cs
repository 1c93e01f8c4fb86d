using SweepStats.Report.Text;

namespace SweepStats.Report.Screens;

/// <summary>The beginning of a long answer, as much as one screen holds.</summary>
public static class FirstLines
{
    /// <summary>Lines as they are where they fit; else as many as fit, and how many are left and where to have them.</summary>
    /// <param name="lines">The whole answer, not yet broken.</param>
    /// <param name="columns">Width of the console.</param>
    public static IReadOnlyList<string> Of(IReadOnlyList<string> lines, int columns)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var whole = new ScreenLines(columns, kept: 0);
        if (whole.TryAdd(lines))
        {
            return whole.Lines;
        }

        var screen = new ScreenLines(columns, kept: 1);
        int shown = lines.TakeWhile(line => screen.TryAdd([line])).Count();
        while (shown > 0 && lines[shown - 1].Length == 0)
        {
            shown--;
        }

        return [.. lines.Take(shown), $"Not shown here: {Printed.Count(lines.Count - shown, "line")}. All of it: --verbose"];
    }
}
