using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;

namespace SweepStats.Planted.Faults;

/// <summary>Faults drawn evenly over the rooms.</summary>
/// <remarks>
/// Each fault has a number that hangs on the seed and on its own text alone, and a room gives those with the lowest. So a change
/// of the core draws anew what it touches, and nothing else.
/// </remarks>
internal sealed class Draw
{
    private readonly CoreSource core;
    private readonly Equivalents equivalents;
    private readonly ulong seed;
    private readonly List<Fault> drawn = [];
    private readonly List<Fault> equal = [];

    private Draw(CoreSource core, Equivalents equivalents, ulong seed) =>
        (this.core, this.equivalents, this.seed) = (core, equivalents, seed);

    /// <summary>Drawn, by file and place.</summary>
    public IEnumerable<Fault> Faults => drawn.OrderBy(f => f.File, StringComparer.Ordinal).ThenBy(f => f.Stretch.Start);

    /// <summary>Places that could be drawn.</summary>
    public int Places { get; private set; }

    /// <summary>Faults drawn that make no program; the next one of the room was drawn instead.</summary>
    public int NotCompiled { get; private set; }

    /// <summary>Faults drawn that are listed as unable to change a result; the next one of the room was drawn instead.</summary>
    public IReadOnlyList<Fault> Equal => equal;

    /// <summary>Draws a number of faults.</summary>
    public static Draw Of(CoreSource core, Equivalents equivalents, int count, ulong seed)
    {
        var draw = new Draw(core, equivalents, seed);
        ImmutableArray<Fault[]> places = core.Places();
        draw.Places = places.Length;
        ILookup<string, Fault[]> rooms = places.ToLookup(place => place[0].Room);
        // What is left of an even share goes to the rooms with most places.
        string[] order = [.. rooms.OrderByDescending(r => r.Count()).Select(r => r.Key)];
        for (int i = 0; i < order.Length; i++)
        {
            draw.From(rooms[order[i]], (count / order.Length) + (i < count % order.Length ? 1 : 0));
        }

        return draw;
    }

    private void From(IEnumerable<Fault[]> room, int wanted)
    {
        var taken = new HashSet<Fault[]>();
        foreach (Drawn next in InOrder(room))
        {
            if (taken.Count == wanted)
            {
                return;
            }

            if (!taken.Contains(next.Place) && IsPlanted(next.Fault))
            {
                taken.Add(next.Place);
                drawn.Add(next.Fault);
            }
        }
    }

    private bool IsPlanted(Fault fault)
    {
        if (equivalents.Why(fault) is not null)
        {
            equal.Add(fault);
            return false;
        }

        bool compiles = core.Compiles(fault);
        NotCompiled += compiles ? 0 : 1;
        return compiles;
    }

    // The same text may stand in a file twice: the second one has another number.
    private IEnumerable<Drawn> InOrder(IEnumerable<Fault[]> room) =>
        room.SelectMany(place => place.Select(fault => new Drawn(place, fault))).GroupBy(d => d.Fault.Key)
            .SelectMany(same => same.Select((d, i) => (Drawn: d, Number: Number($"{seed} {i} {d.Fault.Key}"))))
            .OrderBy(d => d.Number, StringComparer.Ordinal).Select(d => d.Drawn);

    private static string Number(string text) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private sealed record Drawn(Fault[] Place, Fault Fault);
}
