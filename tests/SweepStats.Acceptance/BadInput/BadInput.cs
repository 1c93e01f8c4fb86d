namespace SweepStats.Acceptance.BadInput;

/// <summary>Something a person may hand to the program that it must refuse.</summary>
/// <param name="What">What is bad about it, for the table.</param>
/// <param name="Arrange">Spoils a campaign that is good otherwise.</param>
internal sealed record BadInput(string What, Action<CampaignToSpoil> Arrange)
{
    /// <summary>Further words of the command line.</summary>
    public string[] Words { get; init; } = [];

    /// <summary>A bad floor sweep.</summary>
    public static BadInput Floor(string what, string text, string name = "f.csv") =>
        new(what, c => c.With("floor/" + name, text));

    /// <summary>A bad campaign.toml.</summary>
    public static BadInput Settings(string what, string text) => new(what, c => c.With("campaign.toml", text));

    /// <summary>A bad sweeps.csv.</summary>
    public static BadInput Manifest(string what, string text) => new(what, c => c.With("sweeps.csv", text));

    /// <summary>A bad sweeps.csv of a campaign that asks for a price and a supplier.</summary>
    public static BadInput Properties(string what, string rows, string header = "file,role,lot,specimen,price,supplier\n") =>
        new(what, c => c.With("campaign.toml", "[choice]\nlower_is_better = [\"price\"]\nshown = [\"supplier\"]\n")
            .With("sweeps.csv", header + rows));

    /// <summary>A bad sweeps.csv of a campaign that orders specimens by washes.</summary>
    public static BadInput Ordered(string what, string rows, string header = "file,role,lot,specimen,washes\n") =>
        new(what, c => c.With("campaign.toml", "[lots]\nordered_by = \"washes\"\n").With("sweeps.csv", header + rows));
}
