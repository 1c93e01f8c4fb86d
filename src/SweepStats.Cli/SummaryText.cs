using System.Globalization;
using System.Reflection;
using System.Text;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Results;
using SweepStats.Lots;
using SweepStats.Receivers;

namespace SweepStats.Cli;

/// <summary>summary.json, which is also what --format json prints.</summary>
internal static class SummaryText
{
    /// <summary>Version of this program.</summary>
    public static string Version { get; } =
        typeof(SummaryText).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split(
            '+')[0];

    /// <param name="analysis">What was read and found.</param>
    /// <param name="written">The files of the report; empty where none is written.</param>
    /// <param name="to">Where to.</param>
    public static void Write(CampaignAnalysis analysis, ImmutableArray<InputFile> written, Stream to) =>
        SummaryJson.Write(analysis.Result, Context(analysis, written), to);

    /// <summary>What is written, as text without its last line end.</summary>
    public static string Text(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return Encoding.UTF8.GetString(stream.GetBuffer().AsSpan(0, (int)stream.Length)).TrimEnd();
    }

    /// <summary>summary.json of lots of several campaigns.</summary>
    public static void Write(
        LotHistory history, IReadOnlyList<NamedAnalysis> campaigns, ImmutableArray<InputFile> written, Stream to)
    {
        SummaryContext context = Context(written) with
        {
            Inputs = [.. campaigns.SelectMany(
                c => c.Analysis.Reading.Inputs.Select(i => i with { Path = $"{c.Folder}/{i.Path}" }))],
            LeftOut = [.. campaigns.SelectMany(c => c.Analysis.Reading.LeftOut)],
        };
        LotHistoryJson.Write(history, context, to);
    }

    /// <summary>summary.json of a test with receivers.</summary>
    public static void Write(ReceiverTest test, InputFile? input, ImmutableArray<InputFile> written, Stream to) =>
        ReceiverJson.Write(test, Context(written) with { Inputs = input is null ? [] : [input] }, to);

    private static SummaryContext Context(CampaignAnalysis analysis, ImmutableArray<InputFile> written) => Context(written) with
    {
        GeneratedAt = Now(analysis.Result),
        // Only a report holds figures that were drawn.
        Seed = written.IsEmpty ? null : analysis.Result.Plan.Seed,
        Inputs = analysis.Reading.Inputs,
        Assumptions = analysis.Reading.Assumptions,
        LeftOut = analysis.Reading.LeftOut,
    };

    private static SummaryContext Context(ImmutableArray<InputFile> written) => new()
    {
        Program = "sweepstats",
        Version = Version,
        GeneratedAt = Now(),
        Seed = null,
        Inputs = [],
        ReportFiles = written,
        Assumptions = [],
        LeftOut = [],
    };

    // Nobody measured what was drawn: its report has the time of its last sweep, and the same campaign the same bytes.
    private static DateTimeOffset Now(AnalysisResult result) =>
        result.Rehearsed && Stated() is null && result.Campaign.Used().Max(s => s.TakenAt) is { } drawn ? drawn : Now();

    private static DateTimeOffset Now() => Stated() ?? DateTimeOffset.UtcNow;

    // SOURCE_DATE_EPOCH is what build tools agree on to make outputs reproducible.
    private static DateTimeOffset? Stated() =>
        long.TryParse(Environment.GetEnvironmentVariable("SOURCE_DATE_EPOCH"), CultureInfo.InvariantCulture, out long seconds)
            && seconds is >= 0 and < 253402300800
            ? DateTimeOffset.FromUnixTimeSeconds(seconds) : null;
}
