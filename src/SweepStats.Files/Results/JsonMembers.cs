using System.Text.Json;
using SweepStats.Bands;
using SweepStats.Quantities;

namespace SweepStats.Files.Results;

/// <summary>The members that the JSON of results is made of: null where there is no figure.</summary>
internal static class JsonMembers
{
    // Of thousands of specimens, what has gathered would take as much memory as they do.
    private const int MostPending = 1 << 16;

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

        /// <summary>A whole number of any size; null where there is none.</summary>
        public void Whole(string name, ulong? value)
        {
            if (value is { } number)
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

        /// <summary>A figure with its limits; null where there is none.</summary>
        public void Figure(string name, BandFigure? figure)
        {
            if (figure is not { } stated)
            {
                json.WriteNull(name);
                return;
            }

            json.WriteStartObject(name);
            json.Number("value", stated.Value);
            json.Number("low", stated.Low);
            json.Number("high", stated.High);
            json.WriteEndObject();
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

        /// <summary>An object of what there may be; null where there is nothing.</summary>
        public void Object<T>(string name, T? of, Action<T> members)
            where T : class
        {
            if (of is null)
            {
                json.WriteNull(name);
            }
            else
            {
                json.Object(name, () => members(of));
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
                json.PassOn();
            }

            json.WriteEndArray();
        }

        // Writes out what has gathered.
        private void PassOn()
        {
            if (json.BytesPending > MostPending)
            {
                json.Flush();
            }
        }
    }
}
