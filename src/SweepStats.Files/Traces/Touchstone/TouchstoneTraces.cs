using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Text;
using SweepStats.Sweeps;

namespace SweepStats.Files.Traces.Touchstone;

/// <summary>
/// Makes the traces of a Touchstone file. Of its numbers only those of the parameters wanted are kept, each once, and the levels
/// from the other end.
/// </summary>
internal sealed class TouchstoneTraces : IDisposable
{
    // The other way through the ports is another path where the source stood at one of them only.
    private const string Measure = "measure it; name S12 in place of S21 only if the source was at port 2";

    private readonly TraceText _text;
    private readonly TouchstoneHeader _header;
    private readonly TouchstoneParameter[] _wanted;
    private readonly FaultList _faults;
    private readonly TouchstoneLevels?[] _levels;
    private readonly TouchstonePoints _points;
    private string _named = "";

    /// <param name="text">The file.</param>
    /// <param name="header">Its header.</param>
    /// <param name="wanted">Parameters to read.</param>
    /// <param name="faults">Takes what is wrong.</param>
    public TouchstoneTraces(TraceText text, TouchstoneHeader header, TouchstoneParameter[] wanted, FaultList faults)
    {
        (_text, _header, _wanted, _faults) = (text, header, wanted, faults);
        int capacity = text.LineCount / (header.Ports > 2 ? header.Ports : 1);
        _levels = new TouchstoneLevels?[TouchstoneParameter.Pairs(header)];
        foreach (int place in wanted.Select(p => p.Place).Concat(wanted.Select(p => p.ReversePlace).OfType<int>()))
        {
            _levels[place] ??= new TouchstoneLevels(header.Options.Format, capacity);
        }

        _points = new TouchstonePoints(header, _levels, capacity, faults);
    }

    /// <summary>Reads the data.</summary>
    public TraceReading Read(TraceReadOptions options)
    {
        new TouchstoneBody(_text, _header, _points, _faults).Read();
        if (_faults.Any)
        {
            return new TraceReading { Faults = _faults.All };
        }

        _named = options.ColumnsOnCommandLine ? "with --column S11, in a campaign in sweeps.csv (column = S11)"
            : "in sweeps.csv (column = S11)";
        SayUnused(options);
        Preamble comments = Preamble.Read(_text, _levels.First(l => l is not null)!.FirstLine - 1);
        ImmutableArray<Trace> traces = Traces(options.Grids.Of(_points.Hertz), comments, options.Columns.IsEmpty);
        SayHigh();
        _faults.AssumeAll(comments.Remarks);
        return TraceReading.Of(traces, comments.Settings, _faults);
    }

    private ImmutableArray<Trace> Traces(FrequencyAxis axis, Preamble comments, bool unnamed)
    {
        ReceiverSettings settings = comments.Settings;
        ImmutableArray<double>[] levels = [.. _levels.Select(l => l is null ? [] : l.HandOut())];
        ImmutableArray<double>[] phases = [.. _levels.Select(l => l is null ? [] : l.HandOutPhases())];
        return
        [
            .. _wanted.Select(p => new Trace(p.Name, p.Name, LevelUnit.Decibels, axis, levels[p.Place])
            {
                Settings = settings,
                TakenAt = comments.Taken.At,
                Phases = phases[p.Place],
                ReverseLevels = p.ReversePlace is { } reverse && _levels[reverse]!.IsMeasured ? levels[reverse] : [],
                Blank = _levels[p.Place]!.Blank,
                Doubts = [.. Doubts(p, unnamed)],
            }),
        ];
    }

    /// <summary>Gives back the working memory of frequencies and levels.</summary>
    public void Dispose()
    {
        _points.Dispose();
        foreach (TouchstoneLevels? levels in _levels)
        {
            levels?.Dispose();
        }
    }

    private IEnumerable<ReadFault> Doubts(TouchstoneParameter parameter, bool unnamed)
    {
        if (_header.Ports == 1 && unnamed)
        {
            yield return new ReadFault(_text.File, null, "a one-port file holds a reflection, not an attenuation",
                $"use a two-port file, or name S11 {_named} where the reflection is meant");
        }

        if (_levels.Length > 1 && _levels.All(l => l is { LooksLinear: true }))
        {
            yield return new ReadFault(_text.File, _levels[0]!.FirstLine,
                "the option line says DB, and all levels of all parameters lie between 0 and 1 dB: they look like magnitudes",
                "write MA in place of DB into the option line if they are, or export the file again");
        }

        TouchstoneLevels levels = _levels[parameter.Place]!;
        if (levels.Blank is { } blank)
        {
            yield return new ReadFault(_text.File, levels.FirstLine, $"{parameter.Name} is blank: {blank}", Measure);
        }
        else if (levels.WithoutLevel is { } without)
        {
            yield return new ReadFault(_text.File, without.Line, $"the magnitude of {parameter.Name} {without.Because}",
                $"leave such points out, or {Measure}");
        }
    }

    private void SayUnused(TraceReadOptions options)
    {
        if (options.LevelUnit is { } told and not LevelUnit.Decibels)
        {
            _faults.Assume($"the levels of S-parameters are in dB; the level unit {told.Symbol()} that {options.StatedIn} says "
                + "was not used");
        }
    }

    private void SayHigh()
    {
        string[] high = [.. _wanted.Where(p => _levels[p.Place]!.IsHigh).Select(p => p.Name).Distinct()];
        if (high.Length > 0)
        {
            string names = string.Join(", ", high);
            _faults.Assume(FormattableString.Invariant(
                $"most levels of {names} are above +{TouchstoneLevels.HighDb} dB: raw ratios of receivers, or an option line ")
                + "with the wrong format (DB, MA, RI)");
        }
    }
}
