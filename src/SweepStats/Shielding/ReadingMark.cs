using SweepStats.Doubts;

namespace SweepStats.Shielding;

/// <summary>What a reading is beside its numbers, in few bytes: there is one for each specimen and frequency.</summary>
internal readonly record struct ReadingMark
{
    /// <summary>How many different reasons have room beside the kinds.</summary>
    public const int MostReasons = byte.MaxValue - (int)ReadingKind.Unreadable + 1;

    private readonly byte _kind;
    private readonly byte _state;
    private readonly byte _doubts;
    private readonly Flags _flags;

    /// <param name="reading">The reading.</param>
    /// <param name="reason">Place of the reason why nothing can be claimed, where that is so.</param>
    public ReadingMark(ShieldingReading reading, int reason)
    {
        ReadingEvidence evidence = reading.Evidence;
        _kind = reading switch
        {
            ShieldingReading.Measured => (byte)ReadingKind.Measured,
            ShieldingReading.AtLeast => (byte)ReadingKind.AtLeast,
            ShieldingReading.Unrepeated => (byte)ReadingKind.Unrepeated,
            _ => checked((byte)((byte)ReadingKind.Unreadable + reason)),
        };
        (_state, _doubts) = ((byte)reading.State, (byte)evidence.Doubts);
        _flags = (evidence.Ambient ? Flags.Ambient : 0) | (evidence.ReferenceInFloor ? Flags.ReferenceInFloor : 0)
            | (evidence.HiddenByFloor ? Flags.HiddenByFloor : 0) | (evidence.HiddenBehindPlate ? Flags.HiddenBehindPlate : 0);
    }

    [Flags]
    private enum Flags : byte
    {
        Ambient = 1,
        ReferenceInFloor = 2,
        HiddenByFloor = 4,
        HiddenBehindPlate = 8,
    }

    /// <summary>Which of the four kinds the reading is.</summary>
    public ReadingKind Kind => (ReadingKind)Math.Min(_kind, (byte)ReadingKind.Unreadable);

    /// <summary>Place of the reason, where nothing can be claimed.</summary>
    public int Reason => _kind - (byte)ReadingKind.Unreadable;

    /// <summary>Why it is of its kind.</summary>
    public ShieldingState State => (ShieldingState)_state;

    /// <summary>What stands against taking the reading for a value.</summary>
    public ReadingDoubts Doubts => (ReadingDoubts)_doubts;

    /// <summary>Whether the floor at this frequency holds more than noise.</summary>
    public bool Ambient => _flags.HasFlag(Flags.Ambient);

    /// <summary>Whether the reference rises less than 10 dB over the floor.</summary>
    public bool ReferenceInFloor => _flags.HasFlag(Flags.ReferenceInFloor);

    /// <summary>Whether the covered level cannot be told from the floor.</summary>
    public bool HiddenByFloor => _flags.HasFlag(Flags.HiddenByFloor);

    /// <summary>Whether a leakage that the noise of the plate sweeps may hide could make the covered level alone.</summary>
    public bool HiddenBehindPlate => _flags.HasFlag(Flags.HiddenBehindPlate);
}
