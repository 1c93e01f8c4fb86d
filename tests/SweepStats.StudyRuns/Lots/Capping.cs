namespace SweepStats.StudyRuns.Lots;

/// <summary>Which specimens the floor hides, and where.</summary>
public enum Capping
{
    /// <summary>None: all shield 20 to 50 dB, and the reference stands 70 dB over the noise.</summary>
    None,

    /// <summary>All of them over about the upper quarter of the band.</summary>
    Quarter,

    /// <summary>All of them over about the upper half.</summary>
    Half,

    /// <summary>About half of them at every frequency.</summary>
    Specimens,
}
