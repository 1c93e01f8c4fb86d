using System.Text;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Files.Results;

/// <summary>
/// The cell of a specimen's rows that lists the codes of findings at a frequency; frequencies with the same ones share it.
/// </summary>
internal sealed class FlagCells
{
    private readonly (string Code, Finding[] Findings)[] _codes;
    private readonly Dictionary<string, byte[]> _cells = [];
    private readonly bool[] _here;

    /// <param name="findings">All findings.</param>
    /// <param name="specimen">The specimen.</param>
    public FlagCells(IEnumerable<Finding> findings, SpecimenName specimen)
    {
        _codes =
        [
            .. findings.Where(f => f.Concerns(specimen) && !f.Where.IsDefaultOrEmpty)
                .GroupBy(f => f.Code, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => (g.Key, g.ToArray())),
        ];
        _here = new bool[_codes.Length];
    }

    /// <summary>The cell at a frequency.</summary>
    public ReadOnlySpan<byte> At(Hertz at)
    {
        bool any = false;
        for (int i = 0; i < _codes.Length; i++)
        {
            _here[i] = Holds(_codes[i].Findings, at);
            any |= _here[i];
        }

        return any ? Cell() : [];
    }

    private byte[] Cell()
    {
        string key = string.Create(_here.Length, _here, static (text, here) =>
        {
            for (int i = 0; i < text.Length; i++)
            {
                text[i] = here[i] ? '1' : '0';
            }
        });
        if (!_cells.TryGetValue(key, out byte[]? cell))
        {
            cell = Encoding.UTF8.GetBytes(string.Join(' ', _codes.Where((_, i) => _here[i]).Select(c => c.Code)));
            _cells.Add(key, cell);
        }

        return cell;
    }

    private static bool Holds(Finding[] findings, Hertz at)
    {
        foreach (Finding finding in findings)
        {
            if (Holds(finding, at))
            {
                return true;
            }
        }

        return false;
    }

    // The stretches rise, so the one that may hold a frequency is found by halving.
    private static bool Holds(Finding finding, Hertz at)
    {
        (int low, int high) = (0, finding.Where.Length - 1);
        while (low <= high)
        {
            int middle = (low + high) / 2;
            if (finding.Where[middle].Contains(at))
            {
                return true;
            }

            (low, high) = at < finding.Where[middle].Start ? (low, middle - 1) : (middle + 1, high);
        }

        return false;
    }
}
