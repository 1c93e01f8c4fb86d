using SweepStats.Statistics;

namespace SweepStats.Uncertainty;

/// <summary>Draws of a result, block after block.</summary>
internal sealed class Trials
{
    private readonly MeasurementModel _model;
    private readonly InputQuantity[] _inputs;
    private readonly double[][]? _root;
    private readonly RandomSource _random;
    private readonly List<double[]> _blocks = [];

    /// <summary>Trials of a model; the seed alone decides the draws. Throws where inputs that are not normal correlate.</summary>
    public Trials(MeasurementModel model, IReadOnlyList<InputQuantity> inputs, double[][]? correlation, ulong seed)
    {
        (_model, _inputs, _random) = (model, [.. inputs], new RandomSource(seed));
        _root = correlation is null ? null : Correlations.Root(correlation);
        if (correlation is not null
            && inputs.Select((input, i) =>
                input.Error is not NormalSpread && correlation[i].Where((r, j) => j != i && r != 0).Any()).Contains(true))
        {
            throw new ArgumentException("Correlated inputs must be normal: other spreads do not say how they go together.",
                nameof(correlation));
        }
    }

    /// <summary>All results so far, in the order drawn.</summary>
    public double[] All => [.. _blocks.SelectMany(b => b)];

    /// <summary>Draws a block of so many results and keeps it.</summary>
    public double[] Next(int count)
    {
        var values = new double[count];
        var inputs = new double[_inputs.Length];
        var normals = new double[_inputs.Length];
        for (int trial = 0; trial < count; trial++)
        {
            for (int i = 0; i < inputs.Length; i++)
            {
                normals[i] = _root is null ? 0 : _random.Normal();
                inputs[i] = _inputs[i].Estimate
                    + (_root is null || _inputs[i].Error is not NormalSpread ? _inputs[i].Error.Draw(_random) : 0);
            }

            for (int i = 0; _root is not null && i < inputs.Length; i++)
            {
                for (int j = 0; _inputs[i].Error is NormalSpread && j <= i; j++)
                {
                    inputs[i] += _inputs[i].StandardUncertainty * _root[i][j] * normals[j];
                }
            }

            values[trial] = _model(inputs);
        }

        _blocks.Add(values);
        return values;
    }
}
