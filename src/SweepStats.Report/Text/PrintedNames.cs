using SweepStats.Sweeps;
using static SweepStats.Report.Text.Printed;

namespace SweepStats.Report.Text;

/// <summary>
/// Names of specimens and sweeps as a reader sees them, harmless to print, and how many of them a line has room for.
/// </summary>
public static class PrintedNames
{
    /// <summary>A specimen by lot and name, harmless to print.</summary>
    public static string SpecimenLabel(SpecimenName name) => PlainText.Of(name.ToString());

    /// <summary>A lot as people write it.</summary>
    internal static string LotLabel(string lot) => "lot " + PlainText.Of(lot);

    internal const int MostBandsNamed = 4;
    internal const int MostSpecimensNamed = 8;
    internal const int LongestSpecimen = 40;

    /// <summary>The first of several names, and how many more there are.</summary>
    /// <param name="names">Names, harmless to print.</param>
    /// <param name="most">How many are named.</param>
    public static string Listed(string[] names, int most)
    {
        string named = string.Join(", ", names.Take(most));
        return names.Length > most ? $"{named} and {Plain(names.Length - most)} more" : named;
    }
}
