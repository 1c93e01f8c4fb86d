namespace SweepStats.Shielding;

/// <summary>
/// The levels of the signals behind a reference and a covered reading, by one way of taking the noise out. In dB on the scale of
/// the readings.
/// </summary>
internal interface ILevelLaw
{
    /// <summary>Level of the reference signal; −∞ where the reading does not rise over the floor.</summary>
    double Reference(double reading, double floor);

    /// <summary>Level of the covered signal; −∞ where it may be absent.</summary>
    double Covered(double reading, double floor);
}
