using SweepStats.Sweeps;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>What several traces have in common.</summary>
internal static class SharedSettings
{
    /// <summary>The settings that both state alike; a setting in which they differ is that of neither.</summary>
    public static ReceiverSettings Of(ReceiverSettings one, ReceiverSettings other) => new()
    {
        ResolutionBandwidthHz = Alike(one.ResolutionBandwidthHz, other.ResolutionBandwidthHz),
        VideoBandwidthHz = Alike(one.VideoBandwidthHz, other.VideoBandwidthHz),
        AttenuationDb = Alike(one.AttenuationDb, other.AttenuationDb),
        ReferenceLevel = Alike(one.ReferenceLevel, other.ReferenceLevel),
        Detector = Alike(one.Detector, other.Detector),
        Averaging = Alike(one.Averaging, other.Averaging),
        Averages = one.Averages == other.Averages ? one.Averages : null,
        SweepTimeSeconds = Alike(one.SweepTimeSeconds, other.SweepTimeSeconds),
        TraceMode = Alike(one.TraceMode, other.TraceMode),
        Preamplifier = Alike(one.Preamplifier, other.Preamplifier),
        SourcePowerDbm = Alike(one.SourcePowerDbm, other.SourcePowerDbm),
    };

    /// <summary>Settings of a file, with what is stated nearer to a trace in place of them.</summary>
    public static ReceiverSettings Over(ReceiverSettings file, ReceiverSettings nearer) => new()
    {
        ResolutionBandwidthHz = nearer.ResolutionBandwidthHz ?? file.ResolutionBandwidthHz,
        VideoBandwidthHz = nearer.VideoBandwidthHz ?? file.VideoBandwidthHz,
        AttenuationDb = nearer.AttenuationDb ?? file.AttenuationDb,
        ReferenceLevel = nearer.ReferenceLevel ?? file.ReferenceLevel,
        Detector = nearer.Detector ?? file.Detector,
        Averaging = nearer.Averaging ?? file.Averaging,
        Averages = nearer.Averages ?? file.Averages,
        SweepTimeSeconds = nearer.SweepTimeSeconds ?? file.SweepTimeSeconds,
        TraceMode = nearer.TraceMode ?? file.TraceMode,
        Preamplifier = nearer.Preamplifier ?? file.Preamplifier,
        SourcePowerDbm = nearer.SourcePowerDbm ?? file.SourcePowerDbm,
    };

    private static double? Alike(double? one, double? other) => one == other ? one : null;

    private static string? Alike(string? one, string? other) => one == other ? one : null;
}
