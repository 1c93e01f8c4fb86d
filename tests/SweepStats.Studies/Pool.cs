using System.Collections.Immutable;
using SweepStats.StudyRuns.Coverage;

namespace SweepStats.Studies;

/// <summary>Rows of one cell taken together.</summary>
internal sealed record Pool(CoverageCell Cell, int SnrDb, ImmutableArray<CoverageRow> Rows)
{
    public int Trials => Rows.Sum(r => r.Trials);

    public double Coverage => (double)Rows.Sum(r => r.Held) / Trials;

    public double TooMuch => (double)Rows.Sum(r => r.ClaimedTooMuch) / Trials;

    public double TooLittle => (double)Rows.Sum(r => r.ClaimedTooLittle) / Trials;

    public double PlainCoverage => (double)Rows.Sum(r => r.PlainHeld) / Trials;

    public double BoundShare => (double)Rows.Sum(r => r.Bounds) / Trials;

    public double LargestWidthRatio => Rows.Where(r => double.IsFinite(r.WidthRatio)).Max(r => r.WidthRatio);
}
