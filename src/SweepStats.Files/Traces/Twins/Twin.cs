using System.Runtime.InteropServices;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Twins;

/// <summary>A file that was read, for reading those that differ from it in nothing but the levels. Immutable.</summary>
/// <param name="Text">The file without its levels.</param>
/// <param name="Extension">How its name ends, which may tell a layout.</param>
/// <param name="Reading">What was found in it.</param>
/// <param name="Options">What was known beside its content.</param>
internal sealed record Twin(BetweenLevels Text, string Extension, TraceReading Reading, TraceReadOptions Options)
{
    private Trace Trace => Reading.Traces[0];

    /// <summary>The reading of another file; null where it is no twin, or something is to be said of its levels.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="name">Its name.</param>
    /// <param name="options">What is known beside its content.</param>
    public TraceReading? Read(FileBytes bytes, string name, TraceReadOptions options)
    {
        if (bytes.Assumption is not null || !name.EndsWith(Extension, StringComparison.Ordinal)
            || Path.GetExtension(name.AsSpan()).Length != Extension.Length || options != Options || !Text.IsHeadOf(bytes.Text))
        {
            return null;
        }

        double[] levels = GC.AllocateUninitializedArray<double>(Text.Levels);
        return Text.TryRead(bytes.Text, levels) && !Text.MayBeCut(bytes.Text) && IsSound(levels)
            ? Of(levels) with { Sha256 = bytes.Sha256 } : null;
    }

    /// <summary>Whether nothing is to be said of levels in the unit of the trace.</summary>
    public bool IsSound(double[] levels) => LevelDoubts.Blank(Trace.Unit, levels) is null
        && LevelDoubts.Of(new LevelColumn(1, Trace.Column, Trace.Unit), levels, new("", row => row)).IsEmpty;

    private TraceReading Of(double[] levels) =>
        Reading with { Traces = [Trace with { Levels = ImmutableCollectionsMarshal.AsImmutableArray(levels) }] };
}
