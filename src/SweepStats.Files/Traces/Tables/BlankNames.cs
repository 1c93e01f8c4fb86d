using System.Text;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Names of columns that are parted by blanks, where names may hold blanks themselves.</summary>
internal static class BlankNames
{
    private const int LongestName = 200;

    private static readonly Separator Blanks = new((byte)' ', (byte)'.');

    /// <summary>
    /// As many names as there are columns, if one of these makes them: a unit in brackets goes with the word before it; two
    /// blanks part names; a bare unit goes with the word before it. Else the words as they stand.
    /// </summary>
    public static List<string> Of(ReadOnlySpan<byte> line, int columns)
    {
        List<string> bracketed = Joined(FieldReader.Texts(line, Blanks), f => f[0] is '(' or '[');
        if (bracketed.Count == columns)
        {
            return bracketed;
        }

        List<string> wide = [.. Encoding.UTF8.GetString(line).Replace("\t", "  ", StringComparison.Ordinal)
            .Split("  ", StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
        return wide.Count == columns ? wide
            : Joined(bracketed, f => ColumnName.Of(f).IsBareUnit) is { } units && units.Count == columns ? units : bracketed;
    }

    private static List<string> Joined(List<string> fields, Func<string, bool> isUnit)
    {
        List<string> joined = [];
        foreach (string field in fields)
        {
            bool taken = field.Length > 0 && joined.Count > 0 && joined[^1].Length is > 0 and < LongestName && isUnit(field)
                && joined[^1][^1] is not (')' or ']');
            if (taken)
            {
                joined[^1] += " " + field;
            }
            else
            {
                joined.Add(field);
            }
        }

        return joined;
    }
}
