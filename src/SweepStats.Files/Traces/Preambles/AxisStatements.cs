using SweepStats.Files.Traces.Tables;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// Lines that describe an axis or a column: <c>X-Axis: Frequency [MHz]</c>, <c>Y: Level, dBm</c>, <c>Spalte 2: Pegel in dBµV</c>.
/// </summary>
internal static class AxisStatements
{
    private const int LongestUnit = 40;

    private static readonly HashSet<string> Axes =
    [
        "x", "y", "x axis", "y axis", "xaxis", "yaxis", "axis x", "axis y", "x achse", "y achse", "axe x", "axe y", "axe des x",
        "axe des y", "eje x", "eje y", "asse x", "asse y", "abscissa", "abszisse", "abscisse", "ascissa", "abscisa", "ordinate",
        "ordonnée", "ordinata", "ordenada", "horizontal", "vertical", "horizontal axis", "vertical axis", "x label", "y label",
        "xlabel", "ylabel", "x axis label", "y axis label", "x title", "y title", "x axis title", "y axis title", "x data",
        "y data", "x values", "y values", "x column", "y column", "frequency axis", "level axis", "amplitude axis",
        "frequenzachse", "pegelachse",
    ];

    private static readonly HashSet<string> Columns =
        ["column", "col", "spalte", "colonne", "columna", "colonna", "axis", "achse", "axe", "eje", "asse", "field", "feld"];

    /// <summary>What the axis or column is called, understood; null where the statement describes none.</summary>
    public static ColumnName? Name(Statement statement) => Unit(statement) ??
        (Axes.Contains(statement.Key) || Column(statement) is not null
            ? ColumnName.Of(string.Join(' ', statement.Values.Where(v => v.Length > 0))) : null);

    /// <summary>The unit of "Frequency: MHz" or "Pegel;dBm", as a name; null for any other statement.</summary>
    public static ColumnName? Unit(Statement statement)
    {
        // Asked of every statement: most are about something else.
        bool frequency = ColumnWords.Frequency.Contains(statement.Key);
        if (!(frequency || ColumnWords.Level.Contains(statement.Key)) || statement.Values is not [var value]
            || value.Length > LongestUnit)
        {
            return null;
        }

        string unit = value.Trim('(', ')', '[', ']', ' ');
        return (frequency ? FrequencyUnits.Parse(unit) is not null : LevelUnits.Parse(unit) is not null)
            ? ColumnName.Of(unit) : null;
    }

    /// <summary>The number from 1 of the column that is described; null where none is.</summary>
    public static int? Column(Statement statement) =>
        Columns.Contains(statement.Key) && statement.Number is >= 1 and var number ? number : null;
}
