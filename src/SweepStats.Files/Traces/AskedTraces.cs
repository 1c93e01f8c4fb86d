using System.Globalization;

namespace SweepStats.Files.Traces;

/// <summary>
/// Picks traces by name or number where a file holds them below each other, so that numbers of columns do not tell them apart.
/// </summary>
internal static class AskedTraces
{
    private const int MostListed = 20;

    /// <summary>
    /// The traces asked for, in the order asked; empty, with the reason among the faults, where one is not there or several
    /// answer.
    /// </summary>
    public static ImmutableArray<Trace> Pick(ImmutableArray<Trace> traces, ImmutableArray<string> wanted, FaultList faults)
    {
        var asked = ImmutableArray.CreateBuilder<Trace>();
        foreach (string name in wanted)
        {
            Trace[] answers = [.. traces.Where(t => Answers(t, name))];
            if (answers.Length == 0 && int.TryParse(name, NumberStyles.None, CultureInfo.InvariantCulture, out int number)
                && number >= 1 && number <= traces.Length)
            {
                answers = [traces[number - 1]];
            }

            if (answers.Length != 1)
            {
                string list = string.Join(", ",
                    traces.Take(MostListed).Select((t, i) => FormattableString.Invariant($"{i + 1} '{t.Column}'")));
                faults.Add(
                    null, $"{(answers.Length == 0 ? "there is no trace" : "more than one trace is named")} '{name}' in "
                        + $"{faults.File}; it has {list}", "name a trace as listed here, or by its number from 1");
                return [];
            }

            asked.Add(answers[0]);
        }

        return asked.ToImmutable();
    }

    // By the whole name, or by the part that tells its table: "Sweep 2" of "Sweep 2: Level (dBm)".
    private static bool Answers(Trace trace, string wanted) =>
        string.Equals(trace.Column, wanted, StringComparison.OrdinalIgnoreCase)
            || trace.Column.StartsWith(wanted + ": ", StringComparison.OrdinalIgnoreCase);
}
