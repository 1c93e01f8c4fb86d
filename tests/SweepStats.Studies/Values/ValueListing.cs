using System.Globalization;
using SweepStats.Files.Traces;

namespace SweepStats.Studies.Values;

/// <summary>Prints every value of trace files, to be held against another reader's.</summary>
internal static class ValueListing
{
    /// <summary>
    /// A line a value: file, trace, number from 0, frequency in Hz, level; refused files are a line on the other stream.
    /// </summary>
    public static int Print(IEnumerable<string> files)
    {
        using var output = new StreamWriter(Console.OpenStandardOutput(), bufferSize: 1 << 16);
        foreach (string file in files)
        {
            TraceReading reading = TraceFile.Look(file, Path.GetFileName(file), new TraceReadOptions());
            foreach (var fault in reading.Faults)
            {
                Console.Error.WriteLine($"{file}\trefused\t{fault}");
            }

            foreach (Trace trace in reading.Traces)
            {
                for (int i = 0; i < trace.Levels.Length; i++)
                {
                    output.Write(string.Create(CultureInfo.InvariantCulture,
                        $"{file}\t{trace.Column}\t{i}\t{trace.Axis.Hertz[i]:R}\t{trace.Levels[i]:R}\n"));
                }
            }
        }

        return 0;
    }
}
