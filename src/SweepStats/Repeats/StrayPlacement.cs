namespace SweepStats.Repeats;

/// <summary>Placements of one specimen that lie far from its others. Immutable.</summary>
internal sealed record StrayPlacement
{
    /// <summary>All placements of the specimen.</summary>
    public required PlacementLevels Levels { get; init; }

    /// <summary>Places of those that lie far off; of two that differ, or of halves that do, all on the upper side.</summary>
    public required ImmutableArray<int> Off { get; init; }

    /// <summary>Whether more placements agree than lie off, so that these can be named.</summary>
    public required bool IsSingledOut { get; init; }

    /// <summary>What the spread of all placements was held to tell; null where too few are there to hold it against.</summary>
    public required StrayTest? Test { get; init; }

    /// <summary>Places of the others.</summary>
    public int[] Others => [.. Enumerable.Range(0, Levels.Db.Length).Except(Off)];

    /// <summary>Mean level of those that lie off in dB.</summary>
    public double OffDb => Off.Average(p => Levels.Db[p]);

    /// <summary>Mean level of the others in dB.</summary>
    public double OthersDb => Others.Average(p => Levels.Db[p]);

    /// <summary>How far they lie above the others in dB; negative where below.</summary>
    public double AboveDb => OffDb - OthersDb;

    /// <summary>What they move the level of the specimen by in dB: that of all placements less that of the others.</summary>
    public double MovedDb => Levels.Db.Average() - OthersDb;

    /// <summary>Names of some placements: "p1, p2 and p3".</summary>
    public string Named(IReadOnlyList<int> places) => places.Count == 1 ? Levels.Names[places[0]]
        : $"{string.Join(", ", places.Take(places.Count - 1).Select(p => Levels.Names[p]))} and {Levels.Names[places[^1]]}";
}

/// <summary>A placement against the spread of all.</summary>
/// <param name="T">Student's t of its distance.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the spread without it.</param>
/// <param name="Probability">Chance of any placement as far off where none is.</param>
internal sealed record StrayTest(double T, int DegreesOfFreedom, double Probability);
