namespace SweepStats.Files.Traces.Tables;

/// <summary>A column of levels to read, or the real part of a complex number whose magnitude is the level.</summary>
/// <param name="Index">Its place from 0.</param>
/// <param name="Name">Its name, or its number from 1.</param>
/// <param name="Unit">Its unit; null where nothing states it.</param>
internal sealed record LevelColumn(int Index, string Name, LevelUnit? Unit)
{
    /// <summary>"level", an S-parameter, or "correction".</summary>
    public string Quantity { get; init; } = "level";

    /// <summary>Place of the imaginary part from 0; null where the column is no part of a complex number.</summary>
    public int? Imaginary { get; init; }

    /// <summary>Where its phase stands; null where the table has none that certainly belongs to it.</summary>
    public PhaseColumn? Phase { get; init; }

    /// <summary>Whether a person named the column, so that it is a level whatever it looks like.</summary>
    public bool Asked { get; init; }

    /// <summary>Why the column cannot be the levels of a sweep, as far as its name tells; null where it can.</summary>
    public ReadFault? Doubt { get; init; }
}
