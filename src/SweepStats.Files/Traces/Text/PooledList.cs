using System.Buffers;

namespace SweepStats.Files.Traces.Text;

/// <summary>
/// A growing list in a pooled array. Fresh memory costs more than the parsing it serves, so readers give theirs back.
/// </summary>
internal sealed class PooledList<T>(int capacity) : IDisposable
{
    private T[] _items = ArrayPool<T>.Shared.Rent(Math.Max(capacity, 16));

    /// <summary>How many there are.</summary>
    public int Count { get; private set; }

    public T this[int index] => _items[index];

    /// <summary>All of them, in the pooled array itself: valid until one is added or the list is given back.</summary>
    public ReadOnlySpan<T> Items => _items.AsSpan(0, Count);

    /// <summary>Adds one at the end; a full array is changed for one of twice its size.</summary>
    public void Add(T item)
    {
        T[] items = _items;
        int count = Count;
        if ((uint)count >= (uint)items.Length)
        {
            items = Grown();
        }

        items[count] = item;
        Count = count + 1;
    }

    /// <summary>Adds several at the end, in their order.</summary>
    public void AddRange(ReadOnlySpan<T> items)
    {
        foreach (T item in items)
        {
            Add(item);
        }
    }

    private T[] Grown()
    {
        T[] larger = ArrayPool<T>.Shared.Rent(checked(Count * 2));
        _items.AsSpan(0, Count).CopyTo(larger);
        ArrayPool<T>.Shared.Return(_items);
        return _items = larger;
    }

    /// <summary>Drops everything from a place on.</summary>
    public void CutAt(int count) => Count = count;

    /// <summary>Gives the array back to the pool; the list is empty then.</summary>
    public void Dispose()
    {
        ArrayPool<T>.Shared.Return(_items);
        _items = [];
        Count = 0;
    }
}
