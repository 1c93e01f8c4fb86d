using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Tells why a file holds no table of numbers, as far as that can be seen.</summary>
internal static class NoTable
{
    private const int LongestLine = 1000;
    private const int BytesLookedAt = 4096;

    // Text has none; compressed data has one in ten.
    private const int TextForAControl = 50;

    /// <summary>Adds the reason.</summary>
    /// <param name="text">The file.</param>
    /// <param name="only">Index of the line of its only row of numbers; null where there is none.</param>
    /// <param name="faults">Takes the reason.</param>
    public static void Tell(TraceText text, int? only, FaultList faults)
    {
        if (IsBinary(text))
        {
            faults.Add(null, "the file is not text",
                "export the trace as delimited text; a spreadsheet or a picture that was only renamed stays what it was");
            return;
        }

        for (int i = 0; i < text.LineCount; i++)
        {
            string line = text.Line(i).Length <= LongestLine ? text.LineText(i) : "";
            if (!line.Any(char.IsLetter) && (OddNumber.GroupedIn(line) ?? OddNumber.GroupedByBlanks(line)) is { } number)
            {
                faults.Add(i + 1, $"'{number}' has thousands separators", "export without thousands separators");
                return;
            }

            if (OddNumber.HasStrayQuote(line))
            {
                faults.Add(i + 1, "a quote is opened and not closed", "remove the stray quote or export the sweep again");
                return;
            }
        }

        if (Words(text) is var (at, word))
        {
            string what = word.Length == 0 ? "an empty field" : $"'{word}'";
            faults.Add(at + 1, $"{what} stands among the numbers of a row, in a column that holds neither numbers throughout "
                + "nor words throughout", "leave that column out, or complete it");
            return;
        }

        if (only is { } row)
        {
            faults.Add(row + 1, "one row of numbers only", "a sweep needs at least two, or a line above that names its columns");
            return;
        }

        faults.Add(null, "no table of at least two rows of numbers was found",
            "export the trace as delimited text with a frequency and a level in each row");
    }

    // Two rows below each other with the same number of fields, two of them numbers: a table with a column of words, such as a
    // state or a polarisation.
    private static (int Line, string Word)? Words(TraceText text)
    {
        foreach (byte mark in ";\t,"u8)
        {
            foreach (byte decimalMark in ".,"u8)
            {
                var separator = new Separator(mark, decimalMark);
                int before = 0;
                for (int i = 0; i < text.LineCount; i++)
                {
                    List<string> fields = text.Line(i).Length <= LongestLine ? FieldReader.Texts(text.Line(i), separator) : [];
                    int numbers =
                        fields.Count(f => StrictNumber.TryParse(System.Text.Encoding.UTF8.GetBytes(f), decimalMark, 0, out _));
                    if (numbers >= 2 && numbers < fields.Count && before == fields.Count)
                    {
                        return (i, fields.First(
                            f => !StrictNumber.TryParse(System.Text.Encoding.UTF8.GetBytes(f), decimalMark, 0, out _)));
                    }

                    before = numbers >= 2 ? fields.Count : 0;
                }
            }
        }

        return null;
    }

    private static bool IsBinary(TraceText text)
    {
        int controls = 0;
        int bytes = 0;
        for (int i = 0; i < text.LineCount && bytes < BytesLookedAt; i++)
        {
            ReadOnlySpan<byte> line = text.Line(i);
            line = line[..Math.Min(line.Length, BytesLookedAt)];
            bytes += line.Length + 1;
            foreach (byte b in line)
            {
                controls += b is < 0x20 and not ((byte)'\t' or 0x0C or 0x1A) ? 1 : 0;
            }
        }

        return controls * TextForAControl > bytes;
    }
}
