using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Alignment;

/// <summary>Phases and levels from the other end on the common grid.</summary>
public sealed class PhaseAlignmentTests
{
    private static readonly FrequencyGrid Wide = new([1e6, 2e6, 3e6, 4e6]);
    private static readonly FrequencyGrid Narrow = new([2e6, 4e6]);

    [Fact]
    public void PhasesFollowTheirFrequencies()
    {
        AlignedCampaign aligned = Align(
            Sweep("r", SweepRole.Reference, Wide, [10, 20, 30, 40], [-1, -2, -3, -4]),
            Sweep("c", SweepRole.Covered, Narrow, [-170, 190], [-60, -61]));
        Assert.True(aligned.Reference.HasPhases && aligned.Reference.HasReverse);
        Assert.Equal([20.0, 40], aligned.Reference.Phases(0).ToArray());
        Assert.Equal([-2.0, -4], aligned.Reference.Reverse(0).ToArray());
        Assert.Equal([-170.0, 190], aligned.Covered[0].Block.Phases(0).ToArray());
        Assert.Equal([-60.0, -61], aligned.Covered[0].Block.Reverse(0).ToArray());
    }

    [Fact]
    public void EachSweepHasItsOwnRow()
    {
        SweepBlock block = Align(
            Sweep("r", SweepRole.Reference, Wide, [], []), Sweep("c1", SweepRole.Covered, Narrow, [1, 2], []),
            Sweep("c2", SweepRole.Covered, Wide, [3, 4, 5, 6], [])).Covered[0].Block;
        Assert.Equal([[1.0, 2], [4.0, 6]], new[] { block.Phases(0).ToArray(), block.Phases(1).ToArray() });
    }

    [Fact]
    public void OneSweepWithoutPhaseLeavesItsBlockWithoutAndNoOther()
    {
        AlignedCampaign aligned = Align(
            Sweep("r1", SweepRole.Reference, Wide, [10, 20, 30, 40], []),
            Sweep("r2", SweepRole.Reference, Wide, [], [-1, -2, -3, -4]), Sweep("c", SweepRole.Covered, Wide, [1, 2, 3, 4], []));
        Assert.False(aligned.Reference.HasPhases || aligned.Reference.HasReverse);
        Assert.Throws<InvalidOperationException>(() => aligned.Reference.Phases(0).ToArray());
        Assert.Throws<InvalidOperationException>(() => aligned.Reference.Reverse(0).ToArray());
        Assert.True(aligned.Covered[0].Block.HasPhases);
        Assert.Equal([-10.0, -10, -10, -10], aligned.Reference[1].ToArray());
    }

    [Fact]
    public void ASweepHasOneFinitePhaseAPoint()
    {
        Assert.Throws<ArgumentException>(() => Sweep("c", SweepRole.Covered, Narrow, [1], []));
        Assert.Throws<ArgumentException>(() => Sweep("c", SweepRole.Covered, Narrow, [], [1, double.NegativeInfinity]));
        Assert.Empty(Sweep("c", SweepRole.Covered, Narrow, default, default).Phases);
    }

    private static AlignedCampaign Align(params ImmutableArray<Sweep> sweeps) => Aligner.Align(Rehearsed.Campaign(sweeps), null);

    private static Sweep Sweep(string name, SweepRole role, FrequencyGrid grid, ImmutableArray<double> phases,
        ImmutableArray<double> reverse) =>
        new(name, role, grid, [.. Enumerable.Range(0, grid.Count).Select(i => name == "r2" ? -10 : -20.0 - i - name[^1])],
            LevelScale.DecibelMilliwatts)
        { Phases = phases, ReverseLevels = reverse };
}
