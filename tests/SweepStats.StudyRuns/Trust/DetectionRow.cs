namespace SweepStats.StudyRuns.Trust;

/// <summary>How often a fault of one size was found.</summary>
/// <param name="Code">Code of the check.</param>
/// <param name="Name">The fault.</param>
/// <param name="Unit">Unit of the size.</param>
/// <param name="Size">Size.</param>
/// <param name="Campaigns">Campaigns drawn.</param>
/// <param name="Found">Those in which the check spoke of it.</param>
/// <param name="Warned">Those in which it did with a warning or fault.</param>
public sealed record DetectionRow(string Code, string Name, string Unit, double Size, int Campaigns, int Found, int Warned)
{
    /// <summary>Share found.</summary>
    public double Share => (double)Found / Campaigns;
}
