using SweepStats.Files.Traces.Preambles;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Frequencies that no column holds and the lines above state: first, last, and how many, at equal steps or at equal ratios.
/// </summary>
/// <param name="StartHertz">First frequency in Hz.</param>
/// <param name="StopHertz">Last frequency in Hz.</param>
/// <param name="IsLogarithmic">Whether neighbours have equal ratios.</param>
internal sealed record RegularAxis(double StartHertz, double StopHertz, bool IsLogarithmic)
{
    private const string Write = "export the sweep with a column of frequencies, or write its range and points above the rows, "
        + "in lines such as 'Start,30 MHz', 'Stop,1 GHz' and 'Points,401'";

    /// <summary>Whether lines state a range at all, so that rows without frequencies may be a sweep.</summary>
    public static bool IsStated(Preamble preamble) =>
        preamble.StartBound is not null || preamble.StopBound is not null || preamble.FirstBound is not null;

    /// <summary>
    /// The axis that is stated; null, with the reason among the faults, where it is not stated in full or the rows do not agree
    /// with it.
    /// </summary>
    /// <param name="rows">Number of rows.</param>
    /// <param name="known">What the lines above and the campaign state, and what takes the faults.</param>
    public static RegularAxis? Of(int rows, PriorKnowledge known)
    {
        Preamble preamble = known.Preamble;
        StatedBound? from = preamble.StartBound ?? preamble.FirstBound;
        if (from is not { } start || (preamble.StopBound ?? StatedRange.Reached(from, preamble.Step, rows)) is not { } stop)
        {
            known.Faults.Add(null, $"no column holds the frequency, and {Lack(from, preamble)} above the rows", Write);
            return null;
        }

        if (IsOtherwise(start, known) || Unit(start, stop, known) is not { } unit)
        {
            return null;
        }

        (double first, double last) = (start.Hertz(unit)!.Value, stop.Hertz(unit)!.Value);
        if (Problem(first, last, rows, preamble) is { } problem)
        {
            known.Faults.Add(stop.Line, problem, "export the sweep with a column of frequencies");
            return null;
        }

        if (SpacingOf(preamble, first, known.Faults) is not { } logarithmic || !Counted(rows, first, last, known)
            || !StepFits(logarithmic, known))
        {
            return null;
        }

        known.Faults.Assume(preamble.StopBound is null ? FormattableString.Invariant(
            $"no column holds the frequency; {rows} points from {start.Shown} on in steps of {Shown(preamble.Step!.Value)} were ")
            + "taken, as the lines above state"
            : Told(rows, start, stop, logarithmic ? "equal ratios" : "equal steps"));
        return new RegularAxis(first, last, logarithmic);
    }

    private static string Told(int rows, StatedBound start, StatedBound stop, string steps) =>
        FormattableString.Invariant($"no column holds the frequency; {rows} points at {steps} from {start.Shown} to ")
            + FormattableString.Invariant($"{stop.Shown} were taken, as the lines above state");

    private static string Lack(StatedBound? from, Preamble preamble) =>
        from is not null && preamble.Step is not null
            ? "the start frequency and the step are stated, but not both with a unit,"
        : from is not null ? "only the start frequency is stated"
        : preamble.StopBound is not null ? "only the stop frequency is stated" : "neither start nor stop is stated";

    private static bool IsOtherwise(StatedBound start, PriorKnowledge known)
    {
        if (known.Preamble.OtherRange is { } other)
        {
            known.Faults.Add(start.Line, other, "correct the lines that are wrong, or remove them");
            return true;
        }

        if (known.Preamble.OtherSpacing is { } spacing)
        {
            known.Faults.Add(null, "no column holds the frequency, and a line above speaks of frequencies that may not lie at "
                + $"equal steps: '{spacing}'", Write);
            return true;
        }

        return false;
    }

    private static bool StepFits(bool logarithmic, PriorKnowledge known)
    {
        bool fits = !logarithmic || known.Preamble.StopBound is not null;
        if (!fits)
        {
            known.Faults.Add(known.Preamble.LineOf(Setting.Step),
                "the sweep is logarithmic, and a step does not tell its frequencies", Write);
        }

        return fits;
    }

    /// <summary>The frequencies in Hz; the first and the last exactly as stated.</summary>
    /// <param name="rows">How many, at least 2.</param>
    public double[] Hertz(int rows)
    {
        var hertz = new double[rows];
        for (int i = 0; i < rows; i++)
        {
            // Divided last: a step that is no double would drift.
            hertz[i] = i == rows - 1 ? StopHertz
                : IsLogarithmic ? StartHertz * Math.Pow(StopHertz / StartHertz, (double)i / (rows - 1))
                : StartHertz + ((StopHertz - StartHertz) * i / (rows - 1));
        }

        return hertz;
    }

    private static FrequencyUnit? Unit(StatedBound start, StatedBound stop, PriorKnowledge known)
    {
        if (start.Hertz() is not null && stop.Hertz() is not null)
        {
            return FrequencyUnit.Hertz;
        }

        bool bare = start.Number.Unit.Length == 0 && stop.Number.Unit.Length == 0;
        if (!bare)
        {
            known.Faults.Add(start.Line, $"the range from '{start.Shown}' to '{stop.Shown}' is stated with a unit at one end "
                + "only, or in one that is no unit of frequency", "state start and stop in Hz, kHz, MHz or GHz");
            return null;
        }

        if (known.Preamble.FrequencyUnit is { } stated)
        {
            return stated;
        }

        if (known.Options.FrequencyUnit is { } told)
        {
            known.Faults.Assume($"frequencies are in {told.Symbol()}, as {known.Options.StatedIn} says");
            return told;
        }

        if (stop.Number.Value() >= FrequencyUnitChoice.OnlyHertz)
        {
            known.Faults.Assume(
                "the file does not say the unit of frequency; Hz was taken, since in kHz the last would lie at 1 THz or above");
            return FrequencyUnit.Hertz;
        }

        known.Faults.Add(UnstatedUnitFault.Frequency(known.Faults.File, start.Line,
            "the file does not say the unit of its start and stop frequency",
            "write it behind the numbers, as in 'Start,30 MHz'"));
        return null;
    }

    private static string? Problem(double first, double last, int rows, Preamble preamble) =>
        rows < 2 ? "one row of levels only, which no range of frequencies fits"
        : first == last ? "start and stop are the same: the file holds a record over time, not a sweep"
        : !(first < last) || first < 0
            ? FormattableString.Invariant($"the stated range from {first:R} Hz to {last:R} Hz does not rise from 0 Hz or more")
        : preamble.Spacing is { } spacing && SpacingWords.IsUneven(spacing)
            ? $"the sweep is of type '{spacing}', whose frequencies start and stop do not tell"
        : null;

    private static bool? SpacingOf(Preamble preamble, double first, FaultList faults)
    {
        bool logarithmic = preamble.Spacing is { } spacing && SpacingWords.IsLogarithmic(spacing);
        if (!logarithmic || first > 0)
        {
            return logarithmic;
        }

        faults.Add(preamble.LineOf(Setting.Spacing), "a logarithmic sweep cannot start at 0 Hz",
            "export the sweep with a column of frequencies");
        return null;
    }

    private static string Shown(StatedNumber number) =>
        number.Unit.Length == 0 ? number.Digits : $"{number.Digits} {number.Unit}";

    // The number of points, or a step that fits: without either a file that was cut off would be stretched over the whole range.
    private static bool Counted(int rows, double first, double last, PriorKnowledge known)
    {
        bool isStepped = known.Preamble.StopBound is null;
        if ((known.Preamble.Points ?? (isStepped ? known.Preamble.Count : null)) is { } points)
        {
            if (points != rows)
            {
                known.Faults.Add(known.Preamble.LineOf(known.Preamble.Points is null ? Setting.Count : Setting.Points),
                    FormattableString.Invariant($"the file states {points} points and holds {rows} levels, and no column holds ")
                        + "the frequency", "export the sweep again");
            }

            return points == rows;
        }

        if (isStepped)
        {
            return true;
        }

        if (known.Preamble.Step?.Hertz(known.Preamble.FrequencyUnit ?? known.Options.FrequencyUnit
            ?? FrequencyUnit.Hertz) is { } step and > 0)
        {
            bool fits = Math.Abs(first + (step * (rows - 1)) - last) <= step / 2;
            if (!fits)
            {
                known.Faults.Add(known.Preamble.LineOf(Setting.Step),
                    FormattableString.Invariant($"{rows} levels at steps of {step:R} Hz do not reach from start to stop, and no ")
                        + "column holds the frequency", "export the sweep again");
            }

            return fits;
        }

        known.Faults.Add(null, "no column holds the frequency, and the number of points is not stated above the rows", Write);
        return false;
    }
}
