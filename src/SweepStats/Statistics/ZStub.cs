namespace SweepStats.Statistics;

internal static class CensoredTolerance { public static double? LowerLimit(double[] v, bool[] b, double share, double conf) => v.Length < 2 || b.Contains(true) ? null : Sample.Mean(v) - (ToleranceLimit.NormalFactor(v.Length, share, conf) * Sample.StandardDeviation(v)); }
