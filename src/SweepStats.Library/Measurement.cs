using SweepStats.Alignment;
using SweepStats.Checks;
using SweepStats.Files.Campaigns;
using SweepStats.Report.Answer;
using SweepStats.Verdicts;

namespace SweepStats.Library;

/// <summary>An analysed campaign: the way in for scripts and notebooks. Immutable.</summary>
/// <remarks>Same campaign, same figures as the program gives, whatever the number of threads.</remarks>
public sealed class Measurement
{
    private Measurement(AnalysisResult result)
    {
        Result = result;
        Specimens = [.. result.Curves.Select(curve => new MeasuredSpecimen(result, curve))];
    }

    /// <summary>Reads and analyses the campaign of a folder, as its campaign.toml asks for.</summary>
    /// <param name="folder">Holds floor, reference and covered sweeps; see the guide of the program.</param>
    /// <param name="change">What to ask for otherwise; null for nothing.</param>
    /// <exception cref="ArgumentException">The folder has no name.</exception>
    /// <exception cref="UnreadableCampaignException">
    /// There is no such folder, a file is at fault, or the sweeps do not go together.
    /// </exception>
    public static Measurement Of(string folder, Func<AnalysisPlan, AnalysisPlan>? change = null)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        var options = new CampaignReadOptions(Threads: Environment.ProcessorCount);
        CampaignReading reading = CampaignFolder.Read(folder, options, progress: null);
        if (reading.Campaign is not { } campaign)
        {
            throw new UnreadableCampaignException(reading.Faults);
        }

        try
        {
            return new Measurement(Analysis.Run(campaign, change?.Invoke(reading.Plan) ?? reading.Plan));
        }
        catch (AlignmentException e)
        {
            throw new UnreadableCampaignException(e.Message, e);
        }
    }

    /// <summary>Everything that was found.</summary>
    public AnalysisResult Result { get; }

    /// <summary>Whether the measurement can be trusted, and how it stands to its requirement, in a sentence.</summary>
    public string Headline => VerdictWords.Headline(Result);

    /// <summary>Whether the measurement can be trusted. Look at it before any figure.</summary>
    public Trust Trust => Result.Verdict.Trust;

    /// <summary>What a reader must know, and what to do next at the bench; the gravest first.</summary>
    public ImmutableArray<Finding> Findings => Result.Findings;

    /// <summary>The specimens, by lot and name.</summary>
    public ImmutableArray<MeasuredSpecimen> Specimens { get; }

    /// <summary>A specimen by its name.</summary>
    /// <param name="name">Its own name where no other lot has it too, else "lot/specimen".</param>
    /// <exception cref="KeyNotFoundException">None has that name, or more than one.</exception>
    public MeasuredSpecimen this[string name] =>
        Specimens.Where(s => s.Name.ToString() == name).Take(2).ToArray() is [var whole] ? whole
        : Specimens.Where(s => s.Name.Specimen == name).Take(2).ToArray() switch
        {
            [var only] => only,
            [] => throw new KeyNotFoundException($"No specimen is called '{name}'. There are {Names()}."),
            _ => throw new KeyNotFoundException(
                $"More than one lot has a specimen '{name}'. Write the lot before it: {Names()}."),
        };

    /// <inheritdoc/>
    public override string ToString() => $"{Result.Title}: {Headline}";

    private string Names()
    {
        const int most = 20;
        string names = string.Join(", ", Specimens.Take(most).Select(s => s.Name));
        return Specimens.Length > most ? $"{names} and {Specimens.Length - most} more" : names;
    }
}
