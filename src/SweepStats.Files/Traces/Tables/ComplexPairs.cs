using System.Collections.Immutable;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Finds real and imaginary parts that stand beside each other and whose magnitude is a level nobody else in the file gives.</summary>
internal static class ComplexPairs
{
    /// <summary>The pairs; their level is 20·log10 of the magnitude.</summary>
    /// <param name="names">All columns.</param>
    /// <param name="levels">Columns that are levels already.</param>
    public static ImmutableArray<LevelColumn> Find(ImmutableArray<ColumnName> names, IReadOnlyList<int> levels)
    {
        var pairs = ImmutableArray.CreateBuilder<LevelColumn>();
        HashSet<(string?, string)> given = [.. levels.Select(l => (names[l].Parameter, names[l].Base))];
        HashSet<string?> parameters = [.. levels.Select(l => names[l].Parameter)];
        for (int i = 0; i + 1 < names.Length; i++)
        {
            (ColumnName real, ColumnName imaginary) = (names[i], names[i + 1]);
            if (real.Part != ComplexPart.Real || imaginary.Part != ComplexPart.Imaginary || real.Base != imaginary.Base)
            {
                continue;
            }

            // A log magnitude beside the pair says the same.
            if (!(real.Base.Length == 0 ? parameters.Contains(real.Parameter) : given.Contains((real.Parameter, real.Base))))
            {
                pairs.Add(new LevelColumn(i, real.Base, LevelUnit.Decibels) { Imaginary = i + 1, Quantity = real.Parameter ?? "level" });
            }
        }

        return pairs.ToImmutable();
    }
}
