using SweepStats.Sweeps;

namespace SweepStats.Alignment;

/// <summary>Places of the analysed frequencies in sweeps. For one thread.</summary>
/// <remarks>Sweeps of one campaign mostly share their grid, so that one search serves them all.</remarks>
/// <param name="analysed">The frequencies.</param>
internal sealed class SearchedPlaces(AnalysedGrid analysed)
{
    private Sweep? _last;
    private ImmutableArray<GridPlace> _places;

    /// <summary>The frequencies.</summary>
    public AnalysedGrid Analysed => analysed;

    /// <summary>For each frequency its place in a sweep.</summary>
    public ImmutableArray<GridPlace> In(Sweep sweep)
    {
        // A frequency between two readings has another place in a floor sweep.
        if (_last is null || !ReferenceEquals(_last.Grid, sweep.Grid) || _last.Role != sweep.Role)
        {
            (_last, _places) = (sweep, analysed.Places(sweep));
        }

        return _places;
    }
}
