namespace SweepStats.Clipping;

/// <summary>How readings show that the receiver, or its display, goes no higher.</summary>
public enum ClippingKind
{
    /// <summary>They do not.</summary>
    None,

    /// <summary>More readings stand at one highest level than chance allows, scattered over the frequencies.</summary>
    Tied,

    /// <summary>Most sweeps stand at their highest level over neighbouring frequencies.</summary>
    Wide,

    /// <summary>The highest level is one at which other sweeps of the campaign are shown to be clipped.</summary>
    Shared,
}
