using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using SweepStats.Quantities;

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

        /// <summary>The two ends of a band.</summary>
        public void Band(FrequencyBand? band)
        {
            json.Number("start_hz", band?.Start.Value);
            json.Number("stop_hz", band?.Stop.Value);
        }

        /// <summary>The members of what has a type, for an object that holds others beside them.</summary>
        public void MembersOf<T>(T value, JsonTypeInfo<T> type)
        {
            foreach (JsonProperty member in JsonSerializer.SerializeToElement(value, type).EnumerateObject())
            {
                member.WriteTo(json);
            }
        }

        /// <summary>A list of texts.</summary>
        public void Texts(string name, IEnumerable<string> texts)
        {
            json.WriteStartArray(name);
            foreach (string text in texts)
            {
                json.WriteStringValue(text);
            }

            json.WriteEndArray();
        }

        /// <summary>A list of numbers.</summary>
        public void Numbers(string name, IEnumerable<double> values)
        {
            json.WriteStartArray(name);
            foreach (double value in values)
            {
                json.WriteNumberValue(value);
            }

            json.WriteEndArray();
        }

        /// <summary>An object.</summary>
        public void Object(string name, Action members)
        {
            json.WriteStartObject(name);
            members();
            json.WriteEndObject();
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
