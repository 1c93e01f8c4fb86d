using Xunit;
using Xunit.Abstractions;

namespace SweepStats.Planted.Trials;

/// <summary>Hears what xunit says: which tests there are, how many ran, and the first that failed.</summary>
internal sealed class Sink : LongLivedMarshalByRefObject, IMessageSink
{
    private readonly List<ITestCase> discovered = [];

    public ManualResetEventSlim Finished { get; } = new();

    public IReadOnlyList<ITestCase> Discovered => discovered;

    public int Ran { get; private set; }

    /// <summary>Its class and name, or what else went wrong.</summary>
    public string? FirstFailed { get; private set; }

    /// <summary>What it says; null where none failed.</summary>
    public string? Why { get; private set; }

    /// <returns>Whether to go on.</returns>
    public bool OnMessage(IMessageSinkMessage message)
    {
        switch (message)
        {
            case ITestCaseDiscoveryMessage found:
                discovered.Add(found.TestCase);
                break;
            case ITestPassed:
                Ran++;
                break;
            case ITestFailed failed:
                FirstFailed ??= $"{failed.TestClass.Class.Name}.{failed.TestMethod.Method.Name}";
                Why ??= string.Join('\n', failed.Messages);
                break;
            case ITestClassCleanupFailure or ITestCollectionCleanupFailure or ITestAssemblyCleanupFailure or IErrorMessage:
                FirstFailed ??= "an error outside of a test";
                break;
            case IDiscoveryCompleteMessage or ITestAssemblyFinished:
                Finished.Set();
                break;
        }

        return FirstFailed is null;
    }
}
