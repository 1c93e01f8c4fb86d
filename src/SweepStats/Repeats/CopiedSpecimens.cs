using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Repeats;

/// <summary>Covered sweeps of different specimens that differ by far less than sweeps of one specimen do. Immutable.</summary>
/// <remarks>
/// Two sweeps of their own differ by what either of them scatters by, over √2 at least, and by what the specimens differ by. So
/// an eighth of the larger scatter of the two specimens is no chance; where neither was swept twice, or what was is alike too, a
/// sixteenth of what the reference scatters by at least, if both stand clear of the floor: averaged noise may scatter by less.
/// Copies that agree at every point are told as such.
/// </remarks>
/// <param name="Sweeps">The sweeps in order, two at least.</param>
/// <param name="Specimens">The specimens they are given out for, in order.</param>
/// <param name="ApartDb">The largest scatter of a reading between two that are alike, in dB.</param>
/// <param name="UsualDb">The least that is usual for one of them, in dB.</param>
internal sealed record CopiedSpecimens(
    ImmutableArray<Sweep> Sweeps, ImmutableArray<SpecimenName> Specimens, double ApartDb, double UsualDb)
{
    // A copy has about the mean of its original; whoever adds more to it does so on purpose.
    private const double SameMeanDb = 0.3;

    // Where every second sweep is quiet the quiet ones lie two apart.
    private const int MostApart = 3;

    // Of tens of thousands a copy is among the nearest all the same: what was added to it lies far below their scatter.
    private const int MostNeighbours = 200;

    // Most pairs are told apart by so many points: of normal scatter they lie below three eighths less than once in 10^7.
    private const int FirstPoints = 32;
    private const double OfFirstPoints = 3;

    /// <summary>The copies; null where there are none.</summary>
    /// <param name="campaign">Sweeps on their common grid.</param>
    /// <param name="floor">The floor; null where none is known.</param>
    /// <param name="threads">Threads to use; the result does not depend on it.</param>
    public static CopiedSpecimens? Among(AlignedCampaign campaign, NoiseFloor? floor, int threads)
    {
        if (campaign.Grid.Count < NearCopies.FewestPoints || campaign.Covered.Length < 2)
        {
            return null;
        }

        double referenceDb = NearCopies.QuietestDb(campaign.Reference);
        CoveredSweep[] OfSpecimen(SpecimenBlock specimen) =>
            [.. CoveredSweep.Of(OwnScatter.Of(specimen, NearCopies.IsSignal(specimen.Block, floor) ? referenceDb : 0))];
        CoveredSweep[] sweeps = [.. SideBySide.Of(campaign.Covered.Length, threads, i => OfSpecimen(campaign.Covered[i]))
            .SelectMany(own => own).OrderBy(s => s.MeanDb)];
        CopiedPair[] found =
            [.. SideBySide.Of(sweeps.Length, threads, i => CopiedPair.After(sweeps, i)).SelectMany(pairs => pairs)];
        return found.Length == 0 ? null : Told(campaign, found);
    }

    private static CopiedSpecimens Told(AlignedCampaign campaign, CopiedPair[] pairs)
    {
        HashSet<Sweep> alike = [.. pairs.SelectMany(p => new[] { p.One.Sweep, p.Other.Sweep })];
        ImmutableArray<Sweep> sweeps = [.. campaign.Covered.SelectMany(c => c.Block.Sweeps).Where(alike.Contains)];
        return new CopiedSpecimens(sweeps, [.. sweeps.Select(SpecimenName.Of).Distinct()], pairs.Max(p => p.ApartDb),
            pairs.Min(p => p.UsualDb));
    }

    /// <summary>A specimen and what its own sweeps scatter by.</summary>
    /// <param name="Specimen">The specimen.</param>
    /// <param name="UsualDb">Least scatter of a reading between sweeps of one placement in dB; 0 where none repeat.</param>
    /// <param name="LeastDb">The least that reference sweeps show, in dB; 0 where it lies in the floor.</param>
    private sealed record OwnScatter(SpecimenBlock Specimen, double UsualDb, double LeastDb)
    {
        /// <summary>Holds sweeps of one placement against each other that lie up to three places apart.</summary>
        public static OwnScatter Of(SpecimenBlock specimen, double leastDb)
        {
            SweepBlock block = specimen.Block;
            double[] pairs = [.. from apart in Enumerable.Range(1, MostApart)
                                 from j in Enumerable.Range(apart, Math.Max(0, block.SweepCount - apart))
                                 where block.Sweeps[j].Placement == block.Sweeps[j - apart].Placement
                                 select PairScatter.Of(block[j], block[j - apart])];
            return new OwnScatter(specimen, pairs.Length == 0 ? 0 : pairs.Min(), leastDb);
        }
    }

    /// <summary>One covered sweep.</summary>
    /// <param name="Own">Its specimen.</param>
    /// <param name="Place">Its place among the sweeps of it.</param>
    /// <param name="MeanDb">Mean level in dB.</param>
    /// <param name="First">Its first levels.</param>
    private sealed record CoveredSweep(OwnScatter Own, int Place, double MeanDb, double[] First)
    {
        /// <summary>The sweep itself.</summary>
        public Sweep Sweep => Own.Specimen.Block.Sweeps[Place];

        /// <summary>Its levels on the common grid, in dB.</summary>
        public ReadOnlySpan<double> Levels => Own.Specimen.Block[Place];

        /// <summary>Every sweep of a specimen, in order.</summary>
        public static IEnumerable<CoveredSweep> Of(OwnScatter own) =>
            Enumerable.Range(0, own.Specimen.Block.SweepCount).Select(j => Of(own, j));

        private static CoveredSweep Of(OwnScatter own, int place)
        {
            ReadOnlySpan<double> levels = own.Specimen.Block[place];
            return new CoveredSweep(own, place, Sample.Mean(levels), levels[..Math.Min(FirstPoints, levels.Length)].ToArray());
        }
    }

    /// <summary>Two sweeps that are alike.</summary>
    private sealed record CopiedPair(CoveredSweep One, CoveredSweep Other, double ApartDb, double UsualDb)
    {
        /// <summary>A sweep with those behind it that are alike.</summary>
        /// <param name="sweeps">In the order of their means.</param>
        /// <param name="first">Its place.</param>
        public static List<CopiedPair> After(CoveredSweep[] sweeps, int first)
        {
            List<CopiedPair> found = [];
            int end = Math.Min(sweeps.Length, first + 1 + MostNeighbours);
            for (int j = first + 1; j < end && sweeps[j].MeanDb - sweeps[first].MeanDb <= SameMeanDb; j++)
            {
                if (Of(sweeps[first], sweeps[j]) is { } pair)
                {
                    found.Add(pair);
                }
            }

            return found;
        }

        private static CopiedPair? Of(CoveredSweep one, CoveredSweep other)
        {
            if (one.Own.Specimen == other.Own.Specimen)
            {
                return null;
            }

            double ownDb = Math.Max(one.Own.UsualDb, other.Own.UsualDb), leastDb = Math.Min(one.Own.LeastDb, other.Own.LeastDb);
            double limit = Math.Max(NearCopies.Share * ownDb, NearCopies.ShareOfSteps * leastDb);
            double stepDb = Math.Max(one.Own.Specimen.Block.StepDb, other.Own.Specimen.Block.StepDb);
            return Math.Max(ownDb, leastDb) >= stepDb
                && PairScatter.Of(one.First, other.First) < OfFirstPoints * limit
                && PairScatter.Of(one.Levels, other.Levels) is var apart && apart < limit
                && !one.Levels.SequenceEqual(other.Levels)
                ? new CopiedPair(one, other, apart, Math.Max(ownDb, leastDb)) : null;
        }
    }
}
