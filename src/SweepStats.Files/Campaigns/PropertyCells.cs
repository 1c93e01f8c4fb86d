using System.Text;
using SweepStats.Files.Traces.Text;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>
/// Collects what the rows of sweeps.csv say of specimens in the user's own columns. A row may leave open what another row of its
/// specimen says.
/// </summary>
internal sealed class PropertyCells(CampaignSettings settings, FaultList faults)
{
    // Squares of what is farther out, or nearer to zero, leave no digits for a line through them.
    private const double Largest = 1e9, Smallest = 1e-9;

    private readonly ImmutableArray<PropertyColumn> _columns = settings.OwnColumns;
    private readonly SortedDictionary<SpecimenName, int> _firstLines = [];
    private readonly HashSet<(SpecimenName Specimen, int Column)> _refused = [];
    private readonly SortedDictionary<(SpecimenName Specimen, int Column), (string Text, int Line)> _cells = [];

    /// <summary>What was said, in the order of specimens, then of the columns under [choice].</summary>
    public ImmutableArray<SpecimenProperty> All =>
        [.. _cells.SelectMany(c => Names(_columns[c.Key.Column])
            .Select(name => new SpecimenProperty(c.Key.Specimen, name, c.Value.Text, Number(c.Value.Text))))];

    /// <summary>Takes the cells of a row.</summary>
    /// <param name="line">Its line.</param>
    /// <param name="entry">What else the row says.</param>
    /// <param name="cell">The cell of a column.</param>
    public void Take(int line, SweepEntry entry, Func<string, string> cell)
    {
        if (entry is { Role: SweepRole.Covered, Exclude: null, Lot: { } lot, Specimen: { } specimen })
        {
            _firstLines.TryAdd(new SpecimenName(lot, specimen), line);
        }

        for (int i = 0; i < _columns.Length; i++)
        {
            if (cell(_columns[i].Key) is { Length: > 0 } text)
            {
                Take(line, entry, i, text);
            }
        }
    }

    /// <summary>
    /// Tells of specimens in use without the number that puts them in an order; a yardstick has no place in it.
    /// </summary>
    public void RefuseGaps()
    {
        for (int i = 0; i < _columns.Length; i++)
        {
            foreach ((SpecimenName specimen, int line) in _firstLines.Where(s => _columns[i].IsNeeded && !IsYardstick(s.Key)))
            {
                if (!_cells.ContainsKey((specimen, i)) && !_refused.Contains((specimen, i)))
                {
                    faults.Add(
                        line, $"the specimen {specimen} has no number in the column '{_columns[i].Name}', which lots.ordered_by "
                            + $"in {CampaignFolder.SettingsName} names",
                        "write it into one row of the specimen; 0 where nothing was done to it");
                }
            }
        }
    }

    private bool IsYardstick(SpecimenName name) =>
        settings.Yardstick is { Text: var text } && (text == name.ToString() || text == name.Specimen);

    // A column that [choice] names in other letters is the same one.
    private IEnumerable<string> Names(PropertyColumn column) =>
        settings.PropertyColumns.Where(c => c.Key == column.Key).Select(c => c.Name).Append(column.Name).Distinct();

    private void Take(int line, SweepEntry entry, int column, string text)
    {
        if (CellFault(line, entry, column, text) is { } odd)
        {
            faults.Add(odd);
        }
        else if (NumberFault(line, _columns[column], text) is { } wrong)
        {
            faults.Add(wrong);
            Refuse(entry, column);
        }
        else if (entry is { Lot: { } lot, Specimen: { } specimen })
        {
            Keep(line, new SpecimenName(lot, specimen), column, text);
        }
    }

    private ReadFault? CellFault(int line, SweepEntry entry, int column, string text)
    {
        string name = _columns[column].Name;
        return entry.Role != SweepRole.Covered ? new(faults.File, line,
                $"the column '{name}' is filled for a {entry.Role.Name()} sweep, and it tells of specimens",
                "fill it in rows of covered sweeps alone")
            : NameRule.Problem(text) is { } problem
                ? new(faults.File, line, $"the cell of '{name}' {problem}", "shorten or correct it")
            : _columns[column].IsLayers && !LayersColumn.Holds(Number(text)) ? new(faults.File, line,
                $"'{text}' in the column '{name}' is not a number of layers", "write 1, 2, 3 and so on, or leave it empty")
            : null;
    }

    private ReadFault? NumberFault(int line, PropertyColumn column, string text)
    {
        double? number = Number(text);
        if (column.IsWeighed && number is null)
        {
            string other = column.IsNeeded ? string.Empty
                : $", or name the column under shown in {CampaignFolder.SettingsName}";
            return new(faults.File, line, $"'{text}' in the column '{column.Name}' is not a number",
                $"write a number with a decimal point and without unit{other}");
        }

        return column.IsNeeded && number is { } size && !IsInReach(size) ? new(faults.File, line,
            $"'{text}' in the column '{column.Name}' is too large or too near to zero to put specimens in an order",
            "write 0, or a number whose size is between 0.000000001 and 1000000000; another unit may do it") : null;
    }

    private void Refuse(SweepEntry entry, int column) =>
        _refused.Add((new SpecimenName(entry.Lot ?? string.Empty, entry.Specimen ?? string.Empty), column));

    private static bool IsInReach(double number) => number == 0 || Math.Abs(number) is >= Smallest and <= Largest;

    private void Keep(int line, SpecimenName specimen, int column, string text)
    {
        if (!_cells.TryAdd((specimen, column), (text, line)) && _cells[(specimen, column)] is var first && first.Text != text)
        {
            faults.Add(line,
                FormattableString.Invariant(
                    $"the column '{_columns[column].Name}' says '{text}' of {specimen}, and '{first.Text}' in line {first.Line}"),
                "write the same in both, or leave one of them empty");
        }
    }

    private static double? Number(string text) =>
        StrictNumber.TryParse(Encoding.UTF8.GetBytes(text), (byte)'.', 0, out double number) ? number : null;
}
