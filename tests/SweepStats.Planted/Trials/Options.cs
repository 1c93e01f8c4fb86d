using Xunit.Abstractions;

namespace SweepStats.Planted.Trials;

/// <summary>What xunit is told: one test at a time, each theory one test.</summary>
internal sealed class Options : ITestFrameworkDiscoveryOptions, ITestFrameworkExecutionOptions
{
    private readonly Dictionary<string, object?> values = [];

    public static Options ForDiscovery() => With("xunit.discovery.PreEnumerateTheories", false);

    public static Options ForRunning() => With("xunit.execution.DisableParallelization", true);

    public TValue GetValue<TValue>(string name) => values.TryGetValue(name, out object? value) ? (TValue)value! : default!;

    public void SetValue<TValue>(string name, TValue value) => values[name] = value;

    private static Options With(string name, bool? value)
    {
        var options = new Options();
        options.SetValue(name, value);
        options.SetValue<bool?>("xunit.execution.SynchronousMessageReporting", true);
        return options;
    }
}
