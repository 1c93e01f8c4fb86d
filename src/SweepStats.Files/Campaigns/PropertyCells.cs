using System.Collections.Immutable;
using System.Text;
using SweepStats.Files.Traces.Text;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>Collects what the rows of sweeps.csv say of specimens in the user's own columns. A row may leave open what another row of its specimen says.</summary>
internal sealed class PropertyCells(ImmutableArray<PropertyColumn> columns, FaultList faults)
{
    private readonly SortedDictionary<(SpecimenName Specimen, int Column), (string Text, int Line)> _cells = [];

    /// <summary>What was said, in the order of specimens, then of the columns under [choice].</summary>
    public ImmutableArray<SpecimenProperty> All =>
        [.. _cells.Select(c => new SpecimenProperty(c.Key.Specimen, columns[c.Key.Column].Name, c.Value.Text, Number(c.Value.Text)))];

    /// <summary>Takes the cells of a row.</summary>
    /// <param name="line">Its line.</param>
    /// <param name="entry">What else the row says.</param>
    /// <param name="cell">The cell of a column.</param>
    public void Take(int line, SweepEntry entry, Func<string, string> cell)
    {
        for (int i = 0; i < columns.Length; i++)
        {
            if (cell(columns[i].Key) is { Length: > 0 } text)
            {
                Take(line, entry, (i, text));
            }
        }
    }

    private void Take(int line, SweepEntry entry, (int Column, string Text) cell)
    {
        string name = columns[cell.Column].Name;
        if (entry.Role != SweepRole.Covered)
        {
            faults.Add(line, $"the column '{name}' is filled for a {entry.Role.Name()} sweep, and it tells of specimens", "fill it in rows of covered sweeps alone");
        }
        else if (NameRule.Problem(cell.Text) is { } problem)
        {
            faults.Add(line, $"the cell of '{name}' {problem}", "shorten or correct it");
        }
        else if (columns[cell.Column].IsWeighed && Number(cell.Text) is null)
        {
            faults.Add(line, $"'{cell.Text}' in the column '{name}' is not a number", $"write a number with a decimal point and without unit, or name the column under shown in {CampaignFolder.SettingsName}");
        }
        else if (entry is { Lot: { } lot, Specimen: { } specimen })
        {
            Keep(line, new SpecimenName(lot, specimen), cell);
        }
    }

    private void Keep(int line, SpecimenName specimen, (int Column, string Text) cell)
    {
        if (!_cells.TryAdd((specimen, cell.Column), (cell.Text, line)) && _cells[(specimen, cell.Column)] is var first && first.Text != cell.Text)
        {
            faults.Add(
                line, FormattableString.Invariant($"the column '{columns[cell.Column].Name}' says '{cell.Text}' of {specimen}, and '{first.Text}' in line {first.Line}"),
                "write the same in both, or leave one of them empty");
        }
    }

    private static double? Number(string text) => StrictNumber.TryParse(Encoding.UTF8.GetBytes(text), (byte)'.', 0, out double number) ? number : null;
}
