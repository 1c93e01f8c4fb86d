using System.Text.Json.Nodes;

namespace SweepStats.Acceptance.Files;

/// <summary>What a JSON schema asks of every member, in lines that two schemas can be held against each other by.</summary>
internal static class SchemaShape
{
    /// <param name="schema">The schema.</param>
    /// <param name="opaque">A member whose inside is left out.</param>
    public static IReadOnlyList<string> Lines(JsonNode schema, string opaque) =>
        [.. Of(schema.AsObject(), schema.AsObject(), "", opaque).Order(StringComparer.Ordinal)];

    private static IEnumerable<string> Of(JsonObject root, JsonObject node, string path, string opaque)
    {
        JsonObject at = Resolved(root, node);
        yield return $"{path}: {string.Join(" or ", Kinds(root, at).Distinct().Order(StringComparer.Ordinal))}";
        if (path.TrimStart('.') == opaque)
        {
            yield break;
        }

        foreach (string line in Beneath(root, at).SelectMany(inner => Of(root, inner.Node, path + inner.Name, opaque)))
        {
            yield return line;
        }
    }

    private static IEnumerable<(string Name, JsonObject Node)> Beneath(JsonObject root, JsonObject at)
    {
        JsonObject inside = Choices(at).Select(choice => Resolved(root, choice)).FirstOrDefault(HasInside) ?? at;
        string[] required = [.. (inside["required"]?.AsArray() ?? []).Select(name => name!.GetValue<string>())];
        foreach ((string name, JsonNode? member) in inside["properties"]?.AsObject() ?? [])
        {
            // A member that may be absent is never null: it is absent instead.
            yield return required.Contains(name) ? ($".{name}", member!.AsObject())
                : ($".{name}?", WithoutNull(member!.AsObject()));
        }

        if (inside["items"] is JsonObject items)
        {
            yield return ("[]", items);
        }
    }

    private static bool HasInside(JsonObject schema) => schema["properties"] is not null || schema["items"] is not null;

    private static JsonObject WithoutNull(JsonObject member)
    {
        JsonObject copy = member.DeepClone().AsObject();
        if (copy["type"] is JsonArray types)
        {
            types.RemoveAll(type => type!.GetValue<string>() == "null");
        }

        return copy;
    }

    private static IEnumerable<string> Kinds(JsonObject root, JsonObject at) => at switch
    {
        _ when Choices(at) is { Length: > 0 } choices => choices.SelectMany(choice => Kinds(root, Resolved(root, choice))),
        _ when at["enum"] is JsonArray values => values.Select(Kind),
        _ when at["const"] is { } value => [Kind(value)],
        _ when at["type"] is JsonArray types => types.Select(type => type!.GetValue<string>()),
        _ => [at["type"]?.GetValue<string>() ?? "anything"],
    };

    private static string Kind(JsonNode? value) => value?.GetValueKind() switch
    {
        null => "null",
        System.Text.Json.JsonValueKind.Number => "integer",
        _ => "string",
    };

    private static JsonObject[] Choices(JsonObject at) =>
        [.. (at["oneOf"]?.AsArray() ?? []).Select(choice => choice!.AsObject())];

    private static JsonObject Resolved(JsonObject root, JsonObject node)
    {
        if (node["$ref"] is not { } pointer)
        {
            return node;
        }

        JsonNode target = root;
        foreach (string step in pointer.GetValue<string>().Split('/').Skip(1))
        {
            target = target is JsonArray list ? list[int.Parse(step, System.Globalization.CultureInfo.InvariantCulture)]!
                : target[step]!;
        }

        return Resolved(root, target.AsObject());
    }
}
