using System.Numerics;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Mending;

/// <summary>
/// What the rows of a table have in common where not all of their fields are numbers: how fields are parted, and which of them
/// are numbers.
/// </summary>
internal sealed class RowPattern
{
    private const int MostFields = 64;
    private const int LongestLine = 4096;
    private const int LinesTried = 600;

    private static readonly byte[] Marks = [(byte)';', (byte)'\t', (byte)',', (byte)' '];

    private readonly List<Range> _fields = [];

    private RowPattern(byte mark, ulong numbers) => (Mark, Numbers) = (mark, numbers);

    /// <summary>Comma, semicolon, tab, or blank for runs of blanks and tabs.</summary>
    public byte Mark { get; }

    /// <summary>The columns of numbers, a bit each from the lowest.</summary>
    public ulong Numbers { get; }

    /// <summary>The fields of the line that was asked for last.</summary>
    public IReadOnlyList<Range> Fields => _fields;

    /// <summary>The pattern of most lines; null where no two lines are alike.</summary>
    public static RowPattern? Find(TraceText text)
    {
        (RowPattern? best, double most) = (null, 1);
        foreach (byte mark in Marks)
        {
            (ulong numbers, int rows, double share) = Commonest(text, mark);
            if (rows > 1 && rows + share > most)
            {
                (best, most) = (new RowPattern(mark, numbers), rows + share);
            }
        }

        return best;
    }

    /// <summary>Whether a line is a row: its numbers stand in the columns where those of the others stand.</summary>
    public bool IsRow(ReadOnlySpan<byte> line) => (LastNumbers = NumbersOf(line, Mark, _fields)) == Numbers;

    /// <summary>The numbers of the line that was asked for last, a bit each.</summary>
    public ulong LastNumbers { get; private set; }

    /// <summary>Whether a column is one of numbers.</summary>
    public bool IsNumber(int column) => column < MostFields && (Numbers >> column & 1) != 0;

    private static (ulong Numbers, int Rows, double Share) Commonest(TraceText text, byte mark)
    {
        var rows = new Dictionary<ulong, (int Rows, long Fields)>();
        List<Range> fields = [];
        int step = Math.Max(1, text.LineCount / LinesTried);
        for (int i = 0; i < text.LineCount; i += step)
        {
            ulong numbers = NumbersOf(text.Line(i), mark, fields);
            if (BitOperations.PopCount(numbers) > 1)
            {
                (int Rows, long Fields) known = rows.GetValueOrDefault(numbers);
                rows[numbers] = (known.Rows + 1, known.Fields + fields.Count);
            }
        }

        if (rows.Count == 0)
        {
            return (0, 0, 0);
        }

        KeyValuePair<ulong, (int Rows, long Fields)> best = rows.MaxBy(r => r.Value.Rows);
        return (best.Key, best.Value.Rows, (double)BitOperations.PopCount(best.Key) * best.Value.Rows / (2 * best.Value.Fields));
    }

    private static ulong NumbersOf(ReadOnlySpan<byte> line, byte mark, List<Range> fields)
    {
        fields.Clear();
        if (line.Length > LongestLine || NumericRows.IsBlankOrComment(line))
        {
            return 0;
        }

        FieldRanges.Of(line, mark, fields);
        ulong numbers = 0;
        for (int i = 0; i < fields.Count && fields.Count <= MostFields; i++)
        {
            numbers |= LooseNumber.Is(FieldRanges.Bare(line[fields[i]])) ? 1UL << i : 0;
        }

        return numbers;
    }
}
