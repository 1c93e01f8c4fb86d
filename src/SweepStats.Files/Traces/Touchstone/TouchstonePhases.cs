using System.Runtime.InteropServices;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Touchstone;

/// <summary>The phases of one parameter in degrees as they come in.</summary>
/// <param name="format">How the file writes complex numbers.</param>
/// <param name="capacity">Points expected.</param>
internal sealed class TouchstonePhases(TouchstoneFormat format, int capacity) : IDisposable
{
    private readonly PooledList<double> _phases = new(capacity);
    private bool _measured;

    /// <summary>
    /// Takes a pair of numbers: the second is the angle in degrees, or the phase is that of the real and imaginary part.
    /// </summary>
    public void Add(double first, double second)
    {
        _measured |= second != 0;
        _phases.Add(format == TouchstoneFormat.RealImaginary ? Phase.OfParts(first, second) : second);
    }

    /// <summary>
    /// Hands out the phases, once. None where every angle or every imaginary part is 0: a scalar instrument fills them in so.
    /// </summary>
    public ImmutableArray<double> HandOut()
    {
        double[] phases = _measured ? _phases.Items.ToArray() : [];
        _phases.Dispose();
        return ImmutableCollectionsMarshal.AsImmutableArray(phases);
    }

    /// <summary>Gives the working memory back, handed out or not.</summary>
    public void Dispose() => _phases.Dispose();
}
