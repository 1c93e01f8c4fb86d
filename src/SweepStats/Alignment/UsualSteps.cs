using System.Numerics;

namespace SweepStats.Alignment;

/// <summary>
/// Which of the steps that receivers usually show levels in fit: all levels looked at are whole multiples of each of them.
/// </summary>
/// <remarks>Found once a block; those that several blocks share follow from what each of them has.</remarks>
/// <param name="Marks">A bit a step, the coarsest lowest.</param>
internal readonly record struct UsualSteps(uint Marks)
{
    private static readonly double[] Steps = [1, 0.5, 0.25, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005, 0.002, 0.001];

    // Of each step the coarser ones that are whole multiples of it: what fits in one of those fits in it too.
    private static readonly uint[] Multiples =
    [
        .. Steps.Select((step, s) => Steps.Take(s)
            .Select((coarser, c) => Math.Abs(Math.IEEERemainder(coarser, step)) < DisplayStep.Same ? 1u << c : 0)
            .Aggregate(0u, (marks, mark) => marks | mark)),
    ];

    /// <summary>All of them: what no level speaks against.</summary>
    public static UsualSteps All { get; } = new((1u << Steps.Length) - 1);

    /// <summary>The coarsest in dB; 0 where none fits.</summary>
    public double Coarsest => Marks == 0 ? 0 : Steps[BitOperations.TrailingZeroCount(Marks)];

    /// <summary>Those that fit levels in dB.</summary>
    public static UsualSteps Of(ReadOnlySpan<double> levels)
    {
        uint marks = 0;
        for (int s = 0; s < Steps.Length; s++)
        {
            marks |= (marks & Multiples[s]) != 0 || AreMultiples(levels, Steps[s]) ? 1u << s : 0;
        }

        return new UsualSteps(marks);
    }

    /// <summary>Those that fit both.</summary>
    public UsualSteps And(UsualSteps other) => new(Marks & other.Marks);

    private static bool AreMultiples(ReadOnlySpan<double> levels, double step)
    {
        int lanes = Vector<double>.Count, f = 0;
        for (; f + lanes <= levels.Length; f += lanes)
        {
            Vector<double> steps = new Vector<double>(levels[f..]) / new Vector<double>(step);
            if (!Vector.LessThanAll(Vector.Abs(steps - Vector.Round(steps)) * step, new Vector<double>(DisplayStep.Same)))
            {
                return false;
            }
        }

        for (; f < levels.Length; f++)
        {
            double steps = levels[f] / step;
            if (!(Math.Abs(steps - Math.Round(steps)) * step < DisplayStep.Same))
            {
                return false;
            }
        }

        return true;
    }
}
