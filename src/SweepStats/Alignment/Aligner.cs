using System.Runtime.InteropServices;
using SweepStats.Quantities;
using SweepStats.Storage;
using SweepStats.Sweeps;

namespace SweepStats.Alignment;

/// <summary>Brings the sweeps of a campaign onto one grid, sorted by what they were taken for; copies are counted once.</summary>
public static class Aligner
{
    /// <summary>Aligns a campaign.</summary>
    /// <param name="campaign">Sweeps as read.</param>
    /// <param name="band">Band to keep; null for all frequencies.</param>
    /// <param name="interpolate">
    /// Sweeps on other frequencies are brought onto those of the covered sweeps, with the error of it told
    /// (<see cref="Interpolation"/>); else only frequencies that all sweeps share are kept.
    /// </param>
    /// <param name="threads">Threads to use; the result does not depend on it.</param>
    /// <exception cref="AlignmentException">
    /// No reference or covered sweep is left, levels have different scales, or no frequency is shared by all sweeps.
    /// </exception>
    public static AlignedCampaign Align(
        Campaign campaign, FrequencyBand? band, bool interpolate = false, int threads = 1)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        ImmutableArray<Sweep> used = [.. campaign.Sweeps.Where(s => s.ExcludedBecause is null && IsShielding(s.Role))];
        RequireRole(campaign, used, SweepRole.Reference,
            "Shielding is the reference level minus the covered level: put sweeps without specimen into reference/.");
        RequireRole(campaign, used, SweepRole.Covered, "Put sweeps with the specimen in place into covered/<lot>/<specimen>/.");
        LevelScale scale = OneScale(used);
        AnalysedGrid analysed =
            Analysed(used, band, interpolate) ?? throw new AlignmentException(NothingShared(used, band, interpolate));
        FrequencyGrid grid = analysed.Grid;

        ImmutableArray<Sweep> aside = [.. campaign.Sweeps.Where(s => s.ExcludedBecause is null && !IsShielding(s.Role))];
        ImmutableArray<DuplicateSweep> duplicates = Copies.Among([.. used, .. aside], threads);
        HashSet<Sweep> dropped = [.. duplicates.Where(d => d.SameKind).Select(d => d.Copy)];
        var searched = new SearchedPlaces(analysed);
        SweepBlock? Block(IEnumerable<Sweep> sweeps) =>
            BlockOf([.. sweeps.Where(s => !dropped.Contains(s))], searched, campaign.Store);
        return new AlignedCampaign
        {
            Grid = grid,
            Scale = scale,
            Floor = Block(used.Where(s => s.Role == SweepRole.Floor)),
            Reference = Block(used.Where(s => s.Role == SweepRole.Reference))!,
            Covered = [.. used.Where(s => s.Role == SweepRole.Covered)
                .GroupBy(s => SpecimenName.Of(s)).OrderBy(g => g.Key)
                .Select(g => new SpecimenBlock(g.Key, Block(g)!))],
            Duplicates = duplicates,
            GridDifferences = interpolate ? [] : Differences(used, grid, band),
            Interpolation = analysed.Interpolation,
            Excluded = [.. campaign.Sweeps.Where(s => s.ExcludedBecause is not null)],
            Unread = campaign.Unread,
            Store = campaign.Store,
            SetAside = [.. aside.Where(s => !dropped.Contains(s))],
        };
    }

    /// <summary>The frequencies that an analysis of these sweeps has; null where they share none.</summary>
    /// <param name="sweeps">Sweeps as read.</param>
    /// <param name="band">Band to keep; null for all frequencies.</param>
    /// <param name="interpolate">Whether sweeps on other frequencies are interpolated.</param>
    public static FrequencyGrid? SharedGrid(ImmutableArray<Sweep> sweeps, FrequencyBand? band, bool interpolate = false) =>
        Analysed([.. sweeps.Where(s => s.ExcludedBecause is null && IsShielding(s.Role))], band, interpolate)?.Grid;

    private static AnalysedGrid? Analysed(ImmutableArray<Sweep> used, FrequencyBand? band, bool interpolate) =>
        interpolate ? AnalysedGrid.Interpolated(used, band) : AnalysedGrid.Shared(used, band);

    private static string NothingShared(ImmutableArray<Sweep> used, FrequencyBand? band, bool interpolate) =>
        interpolate ? "At no covered frequency can the levels of all other sweeps be told: take floor, reference and covered "
            + "over the same band, in steps that follow the curve."
        : AnalysedGrid.Interpolated(used, band) is { } other
        ? "No frequency is shared by all sweeps: take floor, reference and covered with the same "
            + "start, stop and number of points, or set interpolate = true under [band] in "
            + FormattableString.Invariant($"campaign.toml, which keeps {other.Grid.Count} frequencies.")
        : band is null ? "No frequency is shared by all sweeps: take floor, reference and covered with the same start, stop and "
            + "number of points."
        : "No frequency shared by all sweeps lies in the analysed band: check [band] in campaign.toml.";

    private static bool IsShielding(SweepRole role) => role is SweepRole.Floor or SweepRole.Reference or SweepRole.Covered;

    // Who has taken the sweeps is not to take them again: where files could not be read, those are to be mended.
    private static void RequireRole(Campaign campaign, ImmutableArray<Sweep> sweeps, SweepRole role, string remedy)
    {
        if (sweeps.Any(s => s.Role == role))
        {
            return;
        }

        string missing = $"There is no {role.ToString().ToLowerInvariant()} sweep to use";
        throw new AlignmentException(
            UnreadFiles.Of(campaign.Unread, role) is { } unread ? $"{missing}: {unread.Told}. {unread.NextStep}"
                : $"{missing}. {remedy}");
    }

    private static LevelScale OneScale(ImmutableArray<Sweep> sweeps)
    {
        Sweep? other = sweeps.FirstOrDefault(s => s.Scale != sweeps[0].Scale);
        return other is null
            ? sweeps[0].Scale
            : throw new AlignmentException(
                $"{sweeps[0].Name} is in {sweeps[0].Scale.Symbol()} and {other.Name} in {other.Scale.Symbol()}: only equal "
                    + "units may be compared. Export all sweeps in one unit.");
    }

    private static SweepBlock? BlockOf(List<Sweep> sweeps, SearchedPlaces searched, RowStore store)
    {
        if (sweeps.Count == 0)
        {
            return null;
        }

        AnalysedGrid analysed = searched.Analysed;
        ImmutableArray<GridPlace>[] places = [.. sweeps.Select(searched.In)];
        KeptRows[]? Rows(Func<Sweep, KeptRows?> values) => RowsOf([.. sweeps.Select(values)], places, store);
        // A phase turns by unknown whole turns from reading to reading, so none is interpolated; without that of one role those
        // of the others say nothing.
        KeptRows[]? phases = analysed.Interpolation is null ? Rows(s => Given(s.Phases)) : null;
        return new SweepBlock([.. sweeps], analysed.Grid.Count, store, Rows(s => s.KeptLevels)!, phases,
            Rows(s => Given(s.ReverseLevels)));
    }

    private static KeptRows? Given(ImmutableArray<double> values) =>
        values.IsEmpty ? null : RowStore.InMemory.Keep(ImmutableCollectionsMarshal.AsArray(values)!);

    // A row for each sweep, one value a frequency of the grid; null where a sweep has no values.
    private static KeptRows[]? RowsOf(KeptRows?[] values, ImmutableArray<GridPlace>[] places, RowStore store)
    {
        if (values.Any(v => v is null))
        {
            return null;
        }

        var rows = new KeptRows[values.Length];
        bool whole = false;
        for (int j = 0; j < rows.Length; j++)
        {
            whole = j > 0 && places[j] == places[j - 1] ? whole : IsWhole(places[j]);
            rows[j] = whole && values[j]!.RowLength == places[j].Length ? values[j]! : store.Keep(At(places[j], values[j]!));
        }

        return rows;
    }

    private static double[] At(ImmutableArray<GridPlace> places, KeptRows values)
    {
        double[] row = values.Rows[0];
        return [.. places.Select(place => place.Of(row))];
    }

    // Each reading in its own place: the row is that of the sweep.
    private static bool IsWhole(ImmutableArray<GridPlace> places)
    {
        for (int f = 0; f < places.Length; f++)
        {
            if (places[f].Below != f || places[f].Share != 0)
            {
                return false;
            }
        }

        return true;
    }

    private static ImmutableArray<GridDifference> Differences(ImmutableArray<Sweep> sweeps, FrequencyGrid grid,
        FrequencyBand? band)
    {
        // Most sweeps share a grid.
        var inBand = new Dictionary<FrequencyGrid, int>(ReferenceEqualityComparer.Instance);
        var differences = ImmutableArray.CreateBuilder<GridDifference>();
        foreach (Sweep sweep in sweeps)
        {
            if (!inBand.TryGetValue(sweep.Grid, out int points))
            {
                points = PointsIn(band, sweep.Grid);
                inBand.Add(sweep.Grid, points);
            }

            if (points > grid.Count)
            {
                differences.Add(new GridDifference(sweep, points - grid.Count));
            }
        }

        return differences.ToImmutable();
    }

    private static int PointsIn(FrequencyBand? band, FrequencyGrid grid)
    {
        int points = 0;
        foreach (double hertz in grid.Hertz)
        {
            points += band is not { } limits || limits.Contains(new Hertz(hertz)) ? 1 : 0;
        }

        return points;
    }
}
