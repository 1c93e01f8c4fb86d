using System.Numerics;
using SweepStats.Bands;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Fields;

/// <summary>A pulse behind one specimen.</summary>
/// <remarks>
/// To first order peak, its bound and energy are weighted means of the shielding in dB. Their limits are those of such a mean
/// (<see cref="FigureEstimator"/>: whole sweeps left out one at a time, floor and stated errors at all frequencies together),
/// about the figure itself, which is not made linear. What findings say the shielding may lie outside its interval widens them.
/// Whatever the phase, |y(t)| is at most ∫|E(f)|·|S(f)| df over all frequencies: for a pulse as IEC 61000-2-9 has it, and equal
/// shielding everywhere, 1.6 times the peak. Bounds stand at their limit there. The energy ∫|E|²·|S|² df does not ask for the
/// phase either.
/// </remarks>
internal sealed class SpecimenPulse
{
    private static readonly OutsideBand[] Assumptions = Enum.GetValues<OutsideBand>();

    // By then a pulse is over, but for the ringing of an edge of the band.
    private const double DecaysKept = 25;

    private readonly ShieldingCurve _curve;
    private readonly PulseReading[] _readings;
    private readonly PulseGrid _grid;
    private readonly MeasuredBand _band;
    private readonly PulseQuestion _question;
    private readonly bool _open;

    // A slope between bounds is no bound of a slope.
    private readonly bool _slopeOpen;

    /// <summary>The pulse of the question behind a specimen, by its readings at the measured frequencies.</summary>
    public SpecimenPulse(ShieldingCurve curve, PulseReading[] readings, MeasuredBand band, PulseQuestion question)
    {
        (_curve, _readings, _band, _grid, _question) = (curve, readings, band, band.Bins, question);
        _open = readings.Any(r => r.IsBound);
        _slopeOpen = Enumerable.Range(0, readings.Length).Any(f => readings[f].IsBound && band.IsInSlope(f));
    }

    /// <summary>What is left under each assumption.</summary>
    /// <param name="filter">What sends the pulse through a curve; of this thread.</param>
    /// <param name="turns">The measured phase; null where none was.</param>
    public ResidualPulse Left(PulseFilter filter, Complex[]? turns)
    {
        double[] db = [.. _readings.Select(r => r.Db)];
        double[][] spread = [.. Assumptions.Select(a => _band.Spread(db, a))];
        int asked = (int)_question.Outside;
        FilteredCurve[] measured = turns is null ? [] : [.. spread.Select(s => new FilteredCurve(s, turns))];
        FilteredPulse[] behind = filter.Through([.. spread.Select(s => new FilteredCurve(s)), .. measured]);
        return new ResidualPulse(_curve.Name, null)
        {
            Assumed = [.. Assumptions.Select((a, i) => Under(a, spread[i], behind[i]) with
            {
                PeakWithMeasuredPhase = turns is null || _open ? null : Wave(behind[Assumptions.Length + i]).Figures()
                    .PeakVoltsPerMetre,
            })],
            Waveform = Wave(behind[asked]).Until(DecaysKept / _question.Pulse.DecayPerSecond),
            EndsEarly = _grid.EndsEarly,
            BoundCount = _readings.Count(r => r is { IsKnown: true, IsBound: true }),
            UnknownCount = _readings.Count(r => !r.IsKnown),
        };
    }

    private Waveform Wave(FilteredPulse behind) => new(behind.Samples, _grid.StepSeconds);

    private PulseLeft Under(OutsideBand outside, double[] spread, FilteredPulse behind)
    {
        PulseFigures? estimate = _open ? null : Wave(behind).Figures();
        PulseBound bound = Bound(outside);
        return new PulseLeft(outside)
        {
            Estimate = estimate,
            PeakLimits = estimate is null ? null
                : Limits(estimate.PeakVoltsPerMetre, _band.Gather(behind.PeakWeights, spread, outside)),
            PeakAtMost = bound.Silence is null ? bound.Peak : null,
            Silence = bound.Silence,
            EnergyAtMost = bound.Energy,
        };
    }

    private Interval? Limits(double peak, double[] weights)
    {
        if (Reach(weights) is not { } reach)
        {
            return null;
        }

        double rise = 0, fall = 0;
        for (int f = 0; f < weights.Length; f++)
        {
            (double lower, double higher) = (_readings[f].Bias.LowerByDb, _readings[f].Bias.HigherByDb);
            (rise, fall) = weights[f] > 0
                ? (rise + (weights[f] * lower), fall + (weights[f] * higher))
                : (rise - (weights[f] * higher), fall - (weights[f] * lower));
        }

        return new Interval(peak * Math.Pow(10, -(reach + fall) / 20), peak * Math.Pow(10, (reach + rise) / 20));
    }

    // How far a weighted mean of the shielding may lie to either side, in dB; null where repeats are missing.
    private double? Reach(double[] weights)
    {
        double[] moving = [.. weights.Select((w, f) => _readings[f].IsKnown ? w : 0)];
        var figures = new FigureEstimator(_curve, moving, _question.Confidence);
        return figures.Parts() is { Repeated: true } parts && figures.Limits(parts).Low is { } low ? parts.Value - low : null;
    }

    private PulseBound Bound(OutsideBand outside)
    {
        // Less what findings may take off.
        double[] spread = _band.Spread([.. _readings.Select(r => r.Db - r.Bias.LowerByDb)], outside);
        var amplitudes = new double[_grid.Bins];
        for (int k = 0; k < amplitudes.Length; k++)
        {
            amplitudes[k] = _grid.Times(k) * _grid.AmplitudeAt(k) * Math.Exp(-spread[k] * PulseFilter.NepersPerDb);
        }

        double[] squares = [.. amplitudes.Select((a, k) => a * a / _grid.Times(k))];
        double peak = amplitudes.Sum() / _grid.Count, power = squares.Sum();
        double? reach = Reach(Gathered(amplitudes, spread, outside)), energyReach = Reach(Gathered(squares, spread, outside));
        double most = peak * Math.Pow(10, (reach ?? 0) / 20);
        return new PulseBound(
            most,
            energyReach is { } e && !(outside == OutsideBand.Slope && _slopeOpen)
                ? power / _grid.Count * _grid.StepSeconds / DoubleExponential.FreeSpaceOhm * Math.Pow(10, e / 10) : null,
            reach is null || (outside == OutsideBand.Slope && _slopeOpen) ? FieldSilence.NoClaim
                : _readings.All(r => !r.IsKnown) ? FieldSilence.FindingOfUnknownSize
                : most >= _question.Pulse.PeakVoltsPerMetre ? FieldSilence.NothingKeptOut : null);
    }

    private double[] Gathered(double[] parts, double[] spread, OutsideBand outside)
    {
        double whole = parts.Sum();
        return _band.Gather([.. parts.Select(p => p / whole)], spread, outside);
    }

    private readonly record struct PulseBound(double Peak, double? Energy, FieldSilence? Silence);
}
