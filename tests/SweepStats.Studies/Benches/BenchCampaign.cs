using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Checks;
using SweepStats.Files.Campaigns;
using SweepStats.Shielding;
using SweepStats.Verdicts;

namespace SweepStats.Studies.Benches;

/// <summary>What the program says of one drawn campaign, beside the truth.</summary>
internal sealed record BenchCampaign
{
    /// <summary>Number of the campaign among its kind.</summary>
    public required string Number { get; init; }

    /// <summary>Why nothing is said at all; null where something is.</summary>
    public string? Refusal { get; init; }

    public Verdicts.Trust Trust { get; init; }

    /// <summary>Every reading of every specimen.</summary>
    public ImmutableArray<JudgedReading> Readings { get; init; } = [];

    /// <summary>Codes of findings, each with its gravest severity; notes too.</summary>
    public ImmutableSortedDictionary<string, Severity> Findings { get; init; } =
        ImmutableSortedDictionary<string, Severity>.Empty;

    /// <summary>Specimens about which something is asked.</summary>
    public int Asked { get; init; }

    /// <summary>Specimens said to meet what they do not.</summary>
    public int FalseMeets { get; init; }

    /// <summary>Specimens said to fail what they meet.</summary>
    public int FalseFails { get; init; }

    /// <summary>Reads and analyses a campaign the way the command run does.</summary>
    public static BenchCampaign Of(string folder)
    {
        string number = Path.GetFileName(folder);
        CampaignReading reading = CampaignFolder.Read(folder, new CampaignReadOptions(), null);
        if (reading.Campaign is null)
        {
            return new BenchCampaign { Number = number, Refusal = reading.Faults[0].ToString() };
        }

        try
        {
            return Judged(number, Analysis.Run(reading.Campaign, reading.Plan), BenchTruth.Read(folder));
        }
        catch (AlignmentException e)
        {
            return new BenchCampaign { Number = number, Refusal = e.Message };
        }
    }

    private static BenchCampaign Judged(string number, AnalysisResult result, BenchTruth truth)
    {
        ImmutableArray<SpecimenOutcome> outcomes = result.Verdict.Specimens;
        ImmutableArray<JudgedReading>[] curves =
            [.. result.Curves.Select((curve, i) => Judged(curve, outcomes.IsEmpty ? null : outcomes[i], truth))];
        bool Conforms(int i) => curves[i].All(r => r.Conforms != false);
        return new BenchCampaign
        {
            Number = number,
            Trust = result.Verdict.Trust,
            Readings = [.. curves.SelectMany(c => c)],
            Findings = result.Findings.GroupBy(f => f.Code)
                .ToImmutableSortedDictionary(g => g.Key, g => g.Max(f => f.Severity), StringComparer.Ordinal),
            Asked = outcomes.Length,
            FalseMeets = outcomes.Where((o, i) => o.Outcome == RequirementOutcome.Meets && !Conforms(i)).Count(),
            FalseFails = outcomes.Where((o, i) => o.Outcome == RequirementOutcome.Fails && Conforms(i)).Count(),
        };
    }

    private static ImmutableArray<JudgedReading> Judged(ShieldingCurve curve, SpecimenOutcome? outcome, BenchTruth truth) =>
        [.. curve.Readings.Select((r, f) => JudgedReading.Of(r, truth.At(curve.Name, r.Evidence.At), outcome?.Frequencies[f]))];
}
