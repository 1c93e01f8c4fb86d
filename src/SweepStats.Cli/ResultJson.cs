using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace SweepStats.Cli;

/// <summary>One JSON object for the console.</summary>
internal static class ResultJson
{
    private static readonly JsonWriterOptions Options =
        new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>
    /// Writes the files that were left out at the user's wish, each with its reason, as a member of an object that is open.
    /// </summary>
    public static void LeftOut(Utf8JsonWriter json, CampaignAnalysis? analysis)
    {
        json.WriteStartArray("left_out");
        foreach (string file in analysis?.Reading.LeftOut ?? [])
        {
            json.WriteStringValue(file);
        }

        json.WriteEndArray();
    }

    /// <param name="members">Writes the members of the object.</param>
    public static string Of(Action<Utf8JsonWriter> members)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            json.WriteStartObject();
            members(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
