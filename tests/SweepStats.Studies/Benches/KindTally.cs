using SweepStats.Checks;

namespace SweepStats.Studies.Benches;

/// <summary>All campaigns of one kind, counted.</summary>
/// <param name="Kind">Its name.</param>
internal sealed record KindTally(string Kind)
{
    /// <summary>Name of the range that holds every reading.</summary>
    public const string All = "all";

    private readonly Dictionary<int, ReadingTally> _overRange = [];

    /// <summary>Ranges in the order in which they were met, all first.</summary>
    public List<KeyValuePair<string, ReadingTally>> Parts { get; } = [new(All, new ReadingTally())];

    public ReadingTally Total => Parts[0].Value;

    public int Campaigns { get; private set; }

    public int Refused { get; private set; }

    /// <summary>The first reason for a refusal.</summary>
    public string? Refusal { get; private set; }

    private Dictionary<Verdicts.Trust, int> Trusted { get; } = [];

    /// <summary>Campaigns in which a finding of a code and severity came.</summary>
    public SortedDictionary<FoundCode, int> Found { get; } = [];

    public int Asked { get; private set; }

    public int FalseMeets { get; private set; }

    public int FalseFails { get; private set; }

    /// <summary>Readings by true shielding less reported dynamic range, in steps of 1 dB centred on whole dB.</summary>
    public IEnumerable<KeyValuePair<int, ReadingTally>> OverRange => _overRange.OrderBy(p => p.Key);

    /// <summary>Campaigns of which a degree of trust was said.</summary>
    public int CountOf(Verdicts.Trust trust) => Trusted.GetValueOrDefault(trust);

    public void Add(BenchCampaign campaign)
    {
        Campaigns++;
        if (campaign.Refusal is not null)
        {
            Refused++;
            Refusal ??= campaign.Refusal;
            return;
        }

        Trusted[campaign.Trust] = Trusted.GetValueOrDefault(campaign.Trust) + 1;
        foreach ((string code, Severity severity) in campaign.Findings)
        {
            var found = new FoundCode(code, severity);
            Found[found] = Found.GetValueOrDefault(found) + 1;
        }

        Asked += campaign.Asked;
        FalseMeets += campaign.FalseMeets;
        FalseFails += campaign.FalseFails;
        AddReadings(campaign);
    }

    private void AddReadings(BenchCampaign campaign)
    {
        bool trusted = campaign.Trust == Verdicts.Trust.Trustworthy;
        Total.Add(campaign.Readings, trusted);
        foreach (IGrouping<string, JudgedReading> part in campaign.Readings.GroupBy(r => r.Truth.Part).Where(g => g.Key != All))
        {
            Part(part.Key).Add([.. part], trusted);
        }

        IEnumerable<JudgedReading> ranged = campaign.Readings.Where(r => double.IsFinite(r.OverRangeDb));
        foreach (IGrouping<int, JudgedReading> bin in ranged.GroupBy(r => (int)Math.Round(r.OverRangeDb)))
        {
            ReadingTally tally = _overRange.GetValueOrDefault(bin.Key) ?? new ReadingTally();
            _overRange[bin.Key] = tally;
            tally.Add([.. bin], trusted);
        }
    }

    private ReadingTally Part(string name)
    {
        int at = Parts.FindIndex(p => p.Key == name);
        if (at < 0)
        {
            at = Parts.Count;
            Parts.Add(new(name, new ReadingTally()));
        }

        return Parts[at].Value;
    }
}

/// <summary>A finding's code with its severity, ordered by severity, gravest first.</summary>
internal readonly record struct FoundCode(string Code, Severity Severity) : IComparable<FoundCode>
{
    public int CompareTo(FoundCode other)
    {
        int bySeverity = other.Severity.CompareTo(Severity);
        return bySeverity != 0 ? bySeverity : string.CompareOrdinal(Code, other.Code);
    }
}
