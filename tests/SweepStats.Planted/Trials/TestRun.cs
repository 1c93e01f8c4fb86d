using System.Reflection;
using System.Security.Cryptography;
using Xunit.Abstractions;
using Xunit.Sdk;

namespace SweepStats.Planted.Trials;

/// <summary>Runs tests in this process, one class after the other, up to the first that fails.</summary>
internal static class TestRun
{
    /// <summary>Word before the name of what begins.</summary>
    public const string Begins = "planted-begins ";

    /// <summary>Word before the name of a test that failed.</summary>
    public const string Failed = "planted-failed ";

    /// <summary>Word before the number of tests that passed, where none failed.</summary>
    public const string Passed = "planted-passed ";

    private const string TestsAssembly = "SweepStats.Tests";

    // Tests that read the source and not the assembly say nothing of a fault in it.
    private static readonly string[] ReadSource = ["SweepStats.Tests.Architecture.", "SweepStats.Tests.Sentences."];

    /// <summary>Runs them in the order of a plan.</summary>
    /// <param name="plan">Names of classes, or of a class and a test.</param>
    /// <returns>Exit code: 0 where all passed, 1 where one failed.</returns>
    public static int Of(IEnumerable<string> plan)
    {
        TextWriter told = Console.Out;
        using var framework = new XunitTestFramework(new Sink());
        AssemblyName name = Assembly.Load(TestsAssembly).GetName();
        ITestCase[] cases = Discovered(framework);
        int passed = 0;
        foreach (TestGroup group in InOrder(cases, [.. plan]))
        {
            told.WriteLine(Begins + group.Name);
            var sink = new Sink();
            using ITestFrameworkExecutor executor = framework.GetExecutor(name);
            executor.RunTests(group.Cases, sink, Options.ForRunning());
            sink.Finished.Wait();
            if (sink.FirstFailed is { } failed)
            {
                told.WriteLine(Failed + failed);
                told.WriteLine(sink.Why);
                return 1;
            }

            passed += sink.Ran;
        }

        told.WriteLine(Passed + passed);
        return 0;
    }

    /// <summary>Changes with the tests.</summary>
    public static string Version() => Convert.ToHexString(SHA256.HashData(
        File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, TestsAssembly + ".dll"))))[..16];

    /// <summary>All classes of tests.</summary>
    public static IEnumerable<string> Classes()
    {
        using var framework = new XunitTestFramework(new Sink());
        return [.. Discovered(framework).Select(Class).Distinct()];
    }

    private static ITestCase[] Discovered(XunitTestFramework framework)
    {
        var sink = new Sink();
        using ITestFrameworkDiscoverer discoverer = framework.GetDiscoverer(Reflector.Wrap(Assembly.Load(TestsAssembly)));
        discoverer.Find(includeSourceInformation: false, sink, Options.ForDiscovery());
        sink.Finished.Wait();
        return [.. sink.Discovered.Where(c => !ReadSource.Any(r => Class(c).StartsWith(r, StringComparison.Ordinal)))];
    }

    private static IEnumerable<TestGroup> InOrder(ITestCase[] cases, string[] plan)
    {
        ILookup<string, ITestCase> classes = cases.ToLookup(Class);
        ILookup<string, ITestCase> tests = cases.ToLookup(c => $"{Class(c)}.{c.TestMethod.Method.Name}");
        return from name in plan
               let found = classes[name].Concat(tests[name]).ToArray()
               where found.Length > 0
               select new TestGroup(name, found);
    }

    private static string Class(ITestCase test) => test.TestMethod.TestClass.Class.Name;

    private sealed record TestGroup(string Name, ITestCase[] Cases);
}
