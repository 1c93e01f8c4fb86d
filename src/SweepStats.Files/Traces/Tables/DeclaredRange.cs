using SweepStats.Files.Traces.Preambles;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Holds the rows against what the lines above state of them: number of points, first and last frequency. What contradicts is
/// refused.
/// </summary>
/// <remarks>
/// A frequency may be off by half a step or by the digits that the statement is rounded to; the last by 2 % of the range where
/// start and number of points agree.
/// </remarks>
/// <param name="preamble">What the lines above state.</param>
/// <param name="column">The unit that the rows give their frequencies in.</param>
/// <param name="faults">Takes what does not agree.</param>
internal sealed class DeclaredRange(Preamble preamble, FrequencyUnit column, FaultList faults)
{
    private const string Remedy =
        "export the sweep again; if the rows are right, correct the line that states it, or remove that line";

    // Of decimal numbers that went through a float.
    private const double Slack = 1e-6;

    // Of the range: nothing that a wrong unit or lost rows would look like.
    private const double LittleFurther = 0.02;

    private static readonly RangeEnd Start = new("start", "begin"), Stop = new("stop", "end");

    /// <summary>Adds what does not agree.</summary>
    /// <param name="axis">The frequencies of one sweep.</param>
    /// <param name="lastLine">The last line of the rows from 1.</param>
    /// <param name="endsFile">Whether it is the last of the file.</param>
    public void Check(FrequencyAxis axis, int lastLine, bool endsFile)
    {
        int rows = axis.Hertz.Length;
        if (preamble.Points > rows && endsFile && EndsEarly(axis))
        {
            faults.Add(lastLine,
                FormattableString.Invariant($"the file states {preamble.Points} points and ends after {rows}, ")
                    + "short of its stop frequency: it was cut off",
                "export the sweep again");
            return;
        }

        if (preamble.Points is { } points && points != rows)
        {
            faults.Add(preamble.LineOf(Setting.Points),
                FormattableString.Invariant($"the file states {points} points and the table holds {rows}"), Remedy);
        }

        if (preamble.OtherRange is { } other)
        {
            faults.Add(preamble.LineOf(Setting.Centre), other, Remedy);
            return;
        }

        if (GoesOn(axis))
        {
            faults.Assume(FormattableString.Invariant(
                $"the file states a stop frequency of {preamble.StopBound!.Shown} and the rows end at {axis.Hertz[^1]:R} Hz; ")
                + "the rows were believed, since start and number of points agree");
            return;
        }

        Compare(Start, preamble.StartBound, axis.Hertz[0], Tolerance(axis, 0));
        Compare(Stop, preamble.StopBound, axis.Hertz[^1], Tolerance(axis, rows - 1));
    }

    // As it was swept: where the file states the start above the stop, the axis falls.
    private bool EndsEarly(FrequencyAxis axis) => preamble.StopBound is { } end
        && Disagrees(end, axis.Hertz[^1], Tolerance(axis, axis.Hertz.Length - 1)) && end.Hertz(column) > axis.Hertz[^1];

    // Some receivers state the stop that was set and write the one that was swept.
    private bool GoesOn(FrequencyAxis axis)
    {
        (double first, double last) = (axis.Hertz[0], axis.Hertz[^1]);
        return preamble.Points == axis.Hertz.Length && preamble.StartBound is { } start && preamble.StopBound is { } stop
            && !Disagrees(start, first, Tolerance(axis, 0)) && Disagrees(stop, last, Tolerance(axis, axis.Hertz.Length - 1))
            && !Disagrees(stop, last, LittleFurther * Math.Abs(last - first));
    }

    private void Compare(RangeEnd end, StatedBound? stated, double hertz, double tolerance)
    {
        // A number alone without a unit may be anything.
        if (stated is null || (stated.Number.Unit.Length == 0 && !IsRange) || !Disagrees(stated, hertz, tolerance))
        {
            return;
        }

        double scale = Math.Pow(10, column.Exponent());
        string at = FormattableString.Invariant($"{hertz / scale:R} {column.Symbol()}");
        faults.Add(
            stated.Line, $"the file states a {end.Name} frequency of {stated.Shown} and the rows {end.Verb} at {at}", Remedy);
    }

    // Both ends with a unit, or two numbers that rise.
    private bool IsRange => preamble.Start?.Value() < preamble.Stop?.Value()
        || (preamble.Start?.Unit.Length > 0 && preamble.Stop?.Unit.Length > 0);

    // A number without unit agrees if it does in any: which of them is asked elsewhere.
    private bool Disagrees(StatedBound stated, double hertz, double tolerance)
    {
        if (stated.Number.Unit.Length == 0)
        {
            return !Enum.GetValues<FrequencyUnit>().Any(unit => Agree(stated, unit, hertz, tolerance));
        }

        return FrequencyUnits.Parse(stated.Number.Unit) is not null && !Agree(stated, column, hertz, tolerance);
    }

    private static bool Agree(StatedBound stated, FrequencyUnit usual, double hertz, double tolerance) =>
        stated.Hertz(usual) is { } declared
        && Math.Abs(declared - hertz) <= Math.Max(tolerance, stated.RoundingHertz(usual)) + (Slack * Math.Max(declared, hertz));

    private static double Tolerance(FrequencyAxis axis, int row)
    {
        int other = row == 0 ? 1 : row - 1;
        return axis.Hertz.Length < 2 ? 0 : Math.Abs(axis.Hertz[row] - axis.Hertz[other]) / 2;
    }

    /// <summary>An end of the range in words, and what rows do there.</summary>
    private readonly record struct RangeEnd(string Name, string Verb);
}
