using System.Globalization;
using SweepStats.Files.Campaigns;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Studies.Benches;

/// <summary>What is true of a drawn campaign: truth.csv with the columns lot, specimen, frequency_hz, se_db, part.</summary>
internal sealed class BenchTruth
{
    private readonly Dictionary<Place, TruePoint> _points;

    private BenchTruth(Dictionary<Place, TruePoint> points) => _points = points;

    /// <summary>Reads the truth of a campaign.</summary>
    /// <exception cref="InvalidDataException">It is not such a table.</exception>
    public static BenchTruth Read(string folder)
    {
        string path = Path.Combine(folder, CampaignFolder.TruthName);
        string[] lines = File.ReadAllLines(path);
        return lines is ["lot,specimen,frequency_hz,se_db,part", ..]
            ? new BenchTruth(lines.Skip(1).Select(line => line.Split(',')).ToDictionary(PlaceOf, PointOf))
            : throw new InvalidDataException($"{path}: the first line is not lot,specimen,frequency_hz,se_db,part");
    }

    /// <summary>The truth at one frequency of a specimen.</summary>
    public TruePoint At(SpecimenName specimen, Hertz at) => _points[new Place(specimen, at.Value)];

    private static Place PlaceOf(string[] f) => new(new SpecimenName(f[0], f[1]), Number(f[2]));

    private static TruePoint PointOf(string[] f) => new(Number(f[3]), f[4]);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private readonly record struct Place(SpecimenName Specimen, double Hertz);
}

/// <summary>True shielding at one frequency.</summary>
/// <param name="ShieldingDb">The shielding in dB.</param>
/// <param name="Part">The range in which its reading is counted.</param>
internal readonly record struct TruePoint(double ShieldingDb, string Part);
