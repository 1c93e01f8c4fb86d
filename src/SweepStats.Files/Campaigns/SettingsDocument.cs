using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace SweepStats.Files.Campaigns;

/// <summary>The text of campaign.toml as TOML.</summary>
internal static class SettingsDocument
{
    /// <summary>The document; null, with the reason among the faults, where the text is none.</summary>
    public static DocumentSyntax? Of(string text, FaultList faults)
    {
        try
        {
            DocumentSyntax document = SyntaxParser.Parse(text, CampaignFolder.SettingsName, true);
            // What follows the first error mostly follows from it.
            if (document.Diagnostics.FirstOrDefault(d => d.Kind == DiagnosticMessageKind.Error) is not { } error)
            {
                return document;
            }

            Tell(error, faults);
        }
        catch (TomlException)
        {
            faults.Add(null, "brackets are nested too deep",
                "correct it; no setting takes more than a list of points such as [[30e6, 20], [1e9, 40]]");
        }

        return null;
    }

    private static void Tell(DiagnosticMessage error, FaultList faults)
    {
        int line = error.Span.Start.Line + 1;
        if (error.Message.Contains("parse integer", StringComparison.Ordinal))
        {
            faults.Add(line, "the number is too large", "correct it; large numbers are written such as 30e6");
            return;
        }

        faults.Add(line, "this is not TOML: " + error.Message.TrimEnd('.'),
            "correct the line; texts stand in double quotes, numbers without units");
    }
}
