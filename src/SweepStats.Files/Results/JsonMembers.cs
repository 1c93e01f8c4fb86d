using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace SweepStats.Files.Results;

/// <summary>The members that the JSON of results is made of: null where there is no figure.</summary>
internal static class JsonMembers
{
    extension(Utf8JsonWriter json)
    {
        /// <summary>A number; null where there is none or JSON cannot write it.</summary>
        public void Number(string name, double? value)
        {
            if (value is { } number && double.IsFinite(number))
            {
                json.WriteNumber(name, number);
            }
            else
            {
                json.WriteNull(name);
            }
        }

        /// <summary>The members of what has a type, for an object that holds others beside them.</summary>
        public void MembersOf<T>(T value, JsonTypeInfo<T> type)
        {
            foreach (JsonProperty member in JsonSerializer.SerializeToElement(value, type).EnumerateObject())
            {
                member.WriteTo(json);
            }
        }

        /// <summary>A list with an object for each item.</summary>
        public void Objects<T>(string name, IEnumerable<T> items, Action<T> members)
        {
            json.WriteStartArray(name);
            foreach (T item in items)
            {
                json.WriteStartObject();
                members(item);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }
    }
}
