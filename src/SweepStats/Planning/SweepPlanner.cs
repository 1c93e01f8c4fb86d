namespace SweepStats.Planning;

/// <summary>Answers how many sweeps and how much range a wanted result needs.</summary>
public static class SweepPlanner
{
    // Shares of the work: the search for the fewest sweeps, the table, and drawing campaigns for a claim, which takes most of it.
    private const double SearchedAt = 0.1, TabledAt = 0.2, RangedAt = 0.9;

    private static readonly int[] PlacementsShown = [2, 3, 4, 6, 10, 20];
    private static readonly int[] SweepsShown = [1, 2, 3, 5, 10];

    /// <summary>Makes a plan.</summary>
    /// <param name="basis">What is known of the set-up.</param>
    /// <param name="question">What is wanted.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    public static SweepPlan Of(PlanBasis basis, PlanQuestion question, IProgress<double>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(basis);
        ArgumentNullException.ThrowIfNull(question);
        bool byPlacement = basis.PlacementDeviationDb is not null;
        var search =
            new FewestSweeps(basis, question.Confidence, question.ReferenceFixed ? question.Numbers.ReferenceSweeps : null);
        ImmutableArray<ExpectedWidth> fewest = question.HalfWidthDb is { } wanted
            ? Fewest(search, wanted, question, byPlacement) : [];
        progress?.Report(SearchedAt);
        SweepNumbers chosen = fewest.Length == 0
            ? question.Numbers
            : fewest.OrderBy(w => w.Numbers.Placements).ThenBy(w => w.Numbers.CoveredSweeps).First().Numbers;
        ResultForecast? forecast = basis.Noise.IsDefaultOrEmpty || !chosen.Repeated ? null
            : new ResultForecast(basis, chosen, question.Confidence, question.ClaimLevel);
        ImmutableArray<ImmutableArray<ExpectedWidth>> table = Table(search, byPlacement);
        progress?.Report(TabledAt);
        return new SweepPlan
        {
            Basis = basis,
            Question = question,
            Table = table,
            Fewest = fewest,
            Chosen = chosen,
            HalfWidthDb = HalfWidthForecast.Db(basis, chosen, question.Confidence),
            HalfWidthInNineOfTenDb = HalfWidthForecast.Db(basis, chosen, question.Confidence, 0.9),
            TwiceThePlacementsDb = byPlacement
                ? Twice(basis, question, chosen with { Placements = 2 * chosen.Placements }) : null,
            TwiceTheSweepsDb = Twice(basis, question, chosen with { SweepsEach = 2 * chosen.SweepsEach }),
            UsableRangeDb = basis.RangeDb is { } range ? forecast?.UsableRangeDb(range) : null,
            Claim = forecast is null ? null
                : Claim(forecast, question, basis.RangeDb, progress is null ? null : new Stretch(progress)),
        };
    }

    private static ImmutableArray<ImmutableArray<ExpectedWidth>> Table(FewestSweeps search, bool byPlacement) => byPlacement
        ? [.. PlacementsShown.Select(n => SweepsShown.Select(m => search.Expect(n, m)).ToImmutableArray())]
        : [.. PlacementsShown.Select(m => ImmutableArray.Create(search.Expect(1, m)))];

    private static double Twice(PlanBasis basis, PlanQuestion question, SweepNumbers numbers) => HalfWidthForecast.Db(
        basis, question.ReferenceFixed ? numbers : numbers with { ReferenceSweeps = 2 * numbers.ReferenceSweeps },
        question.Confidence);

    private static ImmutableArray<ExpectedWidth> Fewest(FewestSweeps search, double wanted, PlanQuestion question,
        bool byPlacement)
    {
        if (question.AllFixed(byPlacement))
        {
            return [];
        }

        if (question.PlacementsFixed || !byPlacement)
        {
            return search.SweepsEach(wanted, question.Numbers.Placements) is { } single ? [single] : [];
        }

        return FewestPlacements(search, wanted, question.SweepsFixed ? [question.Numbers.SweepsEach] : SweepsShown);
    }

    // More sweeps of each are only worth naming where they save a placement.
    private static ImmutableArray<ExpectedWidth> FewestPlacements(FewestSweeps search, double wanted, int[] sweepsEach)
    {
        var kept = ImmutableArray.CreateBuilder<ExpectedWidth>();
        foreach (int each in sweepsEach)
        {
            if (search.Placements(wanted, each) is { } found
                && (kept.Count == 0 || found.Numbers.Placements < kept[^1].Numbers.Placements))
            {
                kept.Add(found);
            }
        }

        return kept.ToImmutable();
    }

    private static ClaimPlan? Claim(ResultForecast forecast, PlanQuestion question, double? range, IProgress<double>? progress)
    {
        if (question.ClaimDb is not { } claim)
        {
            return null;
        }

        double shielding = claim + question.MarginDb;
        var asked = new ClaimForecast(forecast, claim, shielding);
        return new ClaimPlan
        {
            ClaimDb = claim,
            ShieldingDb = shielding,
            RangeNeededDb = asked.RangeNeededDb(question.Probability, progress),
            ShareWithPlenty = asked.ShareWithPlenty,
            ShareNow = range is { } there ? asked.Share(there) : null,
            Expected = range is { } db ? forecast.At(shielding, db) : null,
        };
    }

    /// <summary>The stretch of the work that the range of a claim takes.</summary>
    private sealed class Stretch(IProgress<double> whole) : IProgress<double>
    {
        /// <summary>Tells the share of the whole work that is done, for a share of this stretch.</summary>
        public void Report(double value) => whole.Report(TabledAt + ((RangedAt - TabledAt) * value));
    }
}
