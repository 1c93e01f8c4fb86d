using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace SweepStats.Files.Summaries;

/// <summary>What differs between two results, in the order of the later one. Immutable.</summary>
public sealed record SummaryDifferences
{
    /// <summary>
    /// Trust, requirement, band, whether it was drawn, findings by severity, what was not tested and what overturns decisions,
    /// where they differ.
    /// </summary>
    public required ImmutableArray<WordChange> Verdict { get; init; }

    /// <summary>Keys of the plan that differ, as they are written.</summary>
    public required ImmutableArray<WordChange> Plan { get; init; }

    /// <summary>Checks that found another number of things, or could not be made once.</summary>
    public required ImmutableArray<WordChange> Checks { get; init; }

    /// <summary>Specimens about which something else was decided.</summary>
    public required ImmutableArray<WordChange> Outcomes { get; init; }

    /// <summary>Bands in which others cannot be told from the best.</summary>
    public required ImmutableArray<WordChange> Foremost { get; init; }

    /// <summary>Figures of specimens and lots that differ, in dB.</summary>
    public required ImmutableArray<FigureChange> Figures { get; init; }

    /// <summary>Sweeps that were left out in one of them, or for another reason.</summary>
    public required ImmutableArray<WordChange> Excluded { get; init; }

    /// <summary>Files that the results rest on.</summary>
    public required NameChanges Files { get; init; }

    /// <summary>Specimens that only one of the results has.</summary>
    public required NameChanges Specimens { get; init; }

    /// <summary>Whether nothing of all that differs; what is not listed here is not compared.</summary>
    [JsonIgnore]
    public bool AreNone => Verdict.IsEmpty && Plan.IsEmpty && Checks.IsEmpty && Outcomes.IsEmpty && Foremost.IsEmpty
        && Figures.IsEmpty && Excluded.IsEmpty && Files.AreNone && Specimens.AreNone;

    /// <summary>Holds two results against each other.</summary>
    /// <param name="earlier">The one.</param>
    /// <param name="later">The other.</param>
    public static SummaryDifferences Between(ResultSummary earlier, ResultSummary later)
    {
        ArgumentNullException.ThrowIfNull(earlier);
        ArgumentNullException.ThrowIfNull(later);
        return new()
        {
            Verdict = Words(Answers(earlier), Answers(later)),
            Plan = Words(earlier.Plan.Select(Named), later.Plan.Select(Named)),
            Checks = Words(earlier.Checks.Select(Found), later.Checks.Select(Found)),
            Outcomes = Words(Decided(earlier, later), Decided(later, earlier)),
            Foremost = Words(Best(earlier), Best(later)),
            Figures = FigureChange.Between(earlier, later),
            Excluded = Words(earlier.Excluded.Select(Left), later.Excluded.Select(Left)),
            Files = NameChanges.Between(earlier.Inputs.Select(f => new NamedWord(f.Path, f.Sha256)),
                later.Inputs.Select(f => new NamedWord(f.Path, f.Sha256))),
            Specimens = NameChanges.Between(earlier.Specimens.Select(s => new NamedWord(s.Name, null)),
                later.Specimens.Select(s => new NamedWord(s.Name, null))),
        };
    }

    /// <summary>The same as one JSON object, indented.</summary>
    public string Json() => JsonSerializer.Serialize(this, SummaryNames.Printed.SummaryDifferences);

    private static ImmutableArray<WordChange> Words(IEnumerable<NamedWord> earlier, IEnumerable<NamedWord> later) =>
        WordChange.Between(earlier, later);

    private static IEnumerable<NamedWord> Answers(ResultSummary of) =>
    [
        new("trust", of.Trust), new("requirement", of.Requirement), new("band", Band(of)),
        new("drawn by rehearse", of.Rehearsed ? "yes" : "no"), new("faults", Number(of.Counts.Findings.Fault)),
        new("warnings", Number(of.Counts.Findings.Warning)), new("notes", Number(of.Counts.Findings.Note)),
        new("not tested", Listed(of.NotTested)), new("overturned by", Listed(of.OverturnedBy)),
    ];

    private static string? Band(ResultSummary of) => of.Specimens.IsEmpty ? null
        : string.Create(CultureInfo.InvariantCulture, $"{of.Specimens.Min(s => s.StartHz) / 1e6:0.######} MHz to "
            + $"{of.Specimens.Max(s => s.StopHz) / 1e6:0.######} MHz, {of.Counts.Frequencies} frequencies");

    private static NamedWord Named(KeyValuePair<string, JsonElement> entry) => new(entry.Key, Compact(entry.Value));

    private static NamedWord Found(SummaryCheck check) =>
        new(check.Code, check.UntestedBecause is not null ? "not tested"
            : Number(check.Findings) + (check.LeftBecause is null ? string.Empty : " in part"));

    private static NamedWord Left(SummaryExcluded sweep) => new(sweep.Sweep, sweep.Reason);

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);

    // Specimens that came or went are told as such.
    private static IEnumerable<NamedWord> Decided(ResultSummary of, ResultSummary other)
    {
        HashSet<string> shared = [.. other.Specimens.Select(s => s.Name)];
        return of.Specimens.Where(s => shared.Contains(s.Name)).Select(s => new NamedWord(s.Name, s.Requirement?.Outcome));
    }

    private static IEnumerable<NamedWord> Best(ResultSummary of) =>
        (of.Choice?.Bands ?? []).Select(band => new NamedWord(band.Name ?? "the whole band", Listed(band.Foremost())));

    private static string? Listed(ImmutableArray<string> words) => words.IsEmpty ? null : string.Join(", ", words);

    // Without the blanks of an indented file; null stays null.
    internal static string? Compact(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Null => null,
        JsonValueKind.String => value.GetString(),
        _ => JsonSerializer.Serialize(value, SummaryNames.Default.JsonElement),
    };
}
