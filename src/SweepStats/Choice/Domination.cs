using SweepStats.Sweeps;

namespace SweepStats.Choice;

/// <summary>Finds specimens that some other one leaves no reason to choose.</summary>
internal static class Domination
{
    /// <summary>Each dominated specimen with the best-ranked one that dominates it; none where no property is weighed.</summary>
    public static ImmutableArray<DominatedSpecimen> Among(ImmutableArray<BandRanking> bands,
        ImmutableArray<SpecimenProperty> properties, ChoiceQuestion question)
    {
        if (question.LowerIsBetter.IsEmpty && question.HigherIsBetter.IsEmpty)
        {
            return [];
        }

        var figures = properties.ToDictionary(p => (p.Specimen, p.Name), p => p.Number);
        double?[] Weighed(SpecimenName name) =>
        [
            .. question.LowerIsBetter.Select(p => -figures.GetValueOrDefault((name, p))),
            .. question.HigherIsBetter.Select(p => figures.GetValueOrDefault((name, p))),
        ];
        bands = [.. bands.Where(b => b.PointCount > 0)];
        if (bands.IsEmpty)
        {
            return [];
        }

        SpecimenName[] names = [.. bands[0].Ranking.Select(r => r.Name)];
        Dictionary<SpecimenName, RankedSpecimen>[] byName = [.. bands.Select(b => b.Ranking.ToDictionary(r => r.Name))];
        Standing[] standing = [.. names.Select(n => new Standing([.. byName.Select(b => b[n])], Weighed(n)))];
        return
        [
            .. from i in Enumerable.Range(0, names.Length)
               let better = Array.FindIndex(standing, other => Dominates(other, standing[i]))
               where better >= 0
               orderby names[i]
               select new DominatedSpecimen(names[i], names[better]),
        ];
    }

    // No worse in anything, and better in something that can be told: a property, or a group.
    private static bool Dominates(Standing one, Standing other)
    {
        bool shields = one.Bands.Zip(other.Bands)
            .All(b => !b.Second.Open && (b.First.MeanDb.Value ?? b.First.MeanDb.Low) >= b.Second.MeanDb.Value);
        // Who was told from the best of a group does not rule out one who was not.
        bool noLater = one.Bands.Zip(other.Bands).All(b => b.First.Group is null || b.First.Group <= b.Second.Group);
        bool noWorse = one.Weighed.Zip(other.Weighed).All(w => w.First >= w.Second);
        bool better = one.Weighed.Zip(other.Weighed).Any(w => w.First > w.Second)
            || one.Bands.Zip(other.Bands).Any(b => b.First.Group < b.Second.Group);
        return shields && noLater && noWorse && better;
    }

    /// <param name="Bands">How a specimen stands in each band.</param>
    /// <param name="Weighed">Its properties, the more the better; null where one is not known.</param>
    private sealed record Standing(RankedSpecimen[] Bands, double?[] Weighed);
}
