using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>Compares lots over one band.</summary>
/// <param name="specimens">Specimens of the lots.</param>
/// <param name="curves">Their shielding, in the same order.</param>
/// <param name="frequencies">The lots frequency by frequency.</param>
/// <param name="question">What is asked of them.</param>
/// <param name="threads">Threads to use; the result does not depend on it.</param>
internal sealed class LotBandComparer(
    LotSpecimens specimens, ImmutableArray<ShieldingCurve> curves, LotFrequency[] frequencies, LotQuestion question, int threads)
{
    /// <summary>Compares the lots over a band with a frequency in it; tests are of its clear part, absent without one.</summary>
    public LotBand Over(NamedBand band)
    {
        int[] inside = [.. Enumerable.Range(0, frequencies.Length).Where(f => band.Band.Contains(frequencies[f].At))];
        double[] weights = specimens.ClearWeights(band);
        double share = weights.Sum();
        double[] mean = LogWeights.Whole(weights);
        double[] sweeps = share > 0 ? specimens.BySweep(mean, threads) : [];
        double[] means = [.. specimens.Specimens.Select(s => share > 0 ? LogWeights.Mean(mean, s.Values) : double.NaN)];
        double[][] byLot = [.. specimens.Lots.Select((_, l) => specimens.OfLot<double>(l, means))];
        double[] all = LogWeights.Within(specimens.Grid, band.Band);
        double[] plain = [.. curves.Select(c => LogWeights.Mean(all, f => c.Readings.PlainDb(f)))];
        CurveAnova? anova = share > 0 ? Curves(weights) : null;
        double? probability = Probability(anova?.Probability, [.. inside.Select(f => frequencies[f])]);
        return new LotBand
        {
            Name = band.Name,
            Band = new FrequencyBand(frequencies[inside[0]].At, frequencies[inside[^1]].At),
            ClearShare = share,
            SharedErrorDb = share > 0 && Shared(curves) is { } shared
                ? SharedErrors.Reach(shared, question.Confidence.TwoSidedQuantile) : null,
            Lots =
            [
                .. specimens.Lots.Select((name, l) => LotFigures.Of(
                    new(name, byLot[l], Sample.Mean(specimens.OfLot<double>(l, plain))),
                    Shared(specimens.OfLot(l, curves.AsSpan())), question)),
            ],
            Specimens = [.. specimens.Specimens.Zip(means, (s, m) => new SpecimenMean(s.Name, m))],
            Pairs = share > 0 ? [.. LotFigures.Pairs(specimens.Lots, byLot, question.MarginDb)] : [],
            Foremost = share > 0 ? Foremost(byLot, mean, Open(inside), probability) : [],
            Curves = anova,
            Probability = probability,
            Scatter = share > 0 ? LevelScatter.Of(specimens.Design, sweeps) : [],
            SpecimenStanding = share > 0 ? SpecimenStanding(sweeps) : null,
            OverTime = share > 0 ? OverTime(TimedSpecimen.InOrder([.. specimens.Specimens.Zip(means, Timed)])) : [],
            LotStanding = share > 0
                ? GroupStanding.Of([.. specimens.Lots.Zip(byLot, (name, values) => new GroupValues(name, values))]) : null,
        };

        Contribution[]? Shared(IReadOnlyList<ShieldingCurve> of) => SharedErrors.Of(of, own => LogWeights.Mean(mean, own));
    }

    private static TimedSpecimen Timed(SpecimenSweeps specimen, double mean) =>
        new(specimen.Name.Lot, specimen.Name.Specimen, specimen.TakenAt, mean);

    // Where something transmits, or the reference hardly rises, nobody sees anything of any lot: that speaks for none.
    private bool[] Open(int[] inside)
    {
        bool Hides(int i, int f) =>
            specimens.Specimens[i].Bounds[f] && curves[i].Readings.Mark(f) is { Ambient: false, ReferenceInFloor: false };
        bool[] hidden = [.. Enumerable.Range(0, curves.Length).Select(i => inside.Any(f => Hides(i, f)))];
        return [.. specimens.Lots.Select((_, l) => specimens.OfLot<bool>(l, hidden).Contains(true))];
    }

    // Where nothing shows that lots differ, none is called better than another.
    private ImmutableArray<string> Foremost(double[][] byLot, double[] weights, bool[] open, double? probability)
    {
        ShieldingCurve[][] ofLots = [.. specimens.Lots.Select((_, l) => specimens.OfLot(l, curves.AsSpan()))];
        bool[] stays = ForemostLots.Among(byLot, ofLots, weights, open, question.FalseAlarm);
        bool differ = probability <= question.FalseAlarm;
        return [.. Enumerable.Range(0, stays.Length).Where(l => stays[l] || !differ).OrderByDescending(l => Sample.Mean(byLot[l]))
            .Select(l => specimens.Lots[l])];
    }

    private CurveAnova? Curves(double[] weights) =>
        specimens.Lots.Length > 1 && specimens.Specimens.Length > specimens.Lots.Length
        && CurveAnova.Of([.. specimens.Specimens.Select(s => s.Values)], weights, specimens.LotOf, threads) is { } test
        && double.IsFinite(test.F) ? test : null;

    private static ImmutableArray<ControlChart> OverTime(TimedSpecimen[] specimens) =>
        Array.TrueForAll(specimens, p => double.IsFinite(p.MeanDb))
            ? [.. ControlChart.OfLots(specimens), .. ControlChart.OfSpecimens(specimens)] : [];

    // Whole curves find what goes through the band, single frequencies what is confined to a part of it or hidden by caps
    // elsewhere: a lot off by three deviations over a fifth of the band shows in 28 % of the curves and in 59 % of the
    // frequencies. Where both see it, asking twice costs nothing.
    private static double? Probability(double? curves, LotFrequency[] inside)
    {
        double[] single = [.. inside.Where(f => f.Probability is not null).Select(f => f.Probability!.Value)];
        double? somewhere = single.Length > 0 ? FalseDiscovery.Adjusted(single).Min() : null;
        return curves is { } whole && somewhere is { } least ? CombinedTests.Probability([whole, least]) : curves ?? somewhere;
    }

    // Repeats of a specimen are its placements, or its sweeps where no specimen was placed twice.
    private GroupStanding? SpecimenStanding(double[] sweeps)
    {
        bool byPlacement = SpecimenSweeps.RepeatByPlacement(specimens.Specimens);
        List<GroupValues> groups = [];
        int next = 0;
        foreach (SpecimenSweeps specimen in specimens.Specimens)
        {
            double[] own = sweeps[next..(next += specimen.SweepCount)];
            groups.Add(new(specimen.Name.ToString(), specimen.Repeats(own, byPlacement)));
        }

        return GroupStanding.Of(groups);
    }
}
