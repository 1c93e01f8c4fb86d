using System.Collections.Immutable;
using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Library;

/// <summary>
/// What the page of the package shows as code is compiled and run, on the demo in place of the reader's own folder.
/// </summary>
public sealed partial class PackageExamples
{
    // What a new project brings along, and a console that keeps what it is told.
    private const string Beside =
        """
        global using System;
        global using System.Linq;
        public static class Console
        {
            public static System.Collections.Generic.List<string> Lines { get; } = [];
            public static void WriteLine(object told) => Lines.Add(told.ToString()!);
        }
        """;

    private static readonly string[] Examples =
    [
        .. Code().Matches(File.ReadAllText(Path.Combine(Repository.Root, "src/SweepStats.Library/package.md")))
            .Select(m => m.Groups[1].Value),
    ];

    [Fact]
    public void TheFirstIsFiveLinesAndGivesVerdictIntervalAndChart()
    {
        using var scratch = new ScratchFolder();
        string chart = Path.Combine(scratch.Path, "a01.svg");
        Assert.InRange(Examples[0].Split('\n', StringSplitOptions.RemoveEmptyEntries).Length, 2, 5);
        string[] told = Run(Examples[0].Replace("a01.svg", chart.Replace("\\", "\\\\", StringComparison.Ordinal),
            StringComparison.Ordinal));
        Assert.Equal(2, told.Length);
        Assert.Contains(told[0], Commands.Shell.Run("check", Commands.Shell.Demo, "--verbose").Out, StringComparison.Ordinal);
        Assert.Equal(Reported("A01", 100e6), told[1]);
        Assert.Contains("<svg", File.ReadAllText(chart), StringComparison.Ordinal);
    }

    [Fact]
    public void TheSecondTellsOfEverySpecimenWhatItsKindOfReadingAllows()
    {
        string[] told = Run(Examples[1]);
        Assert.Equal(12, told.Length);
        Assert.All(told, line => Assert.Matches("^[ABC]/[ABC]0[1-4]: (between|at least) [0-9]", line));
        Assert.Contains("A/A01: at least 69.7 dB", told);
    }

    // As shielding.csv of the demo's report has it.
    private static string Reported(string specimen, double hertz)
    {
        string[] row = File.ReadLines(Path.Combine(Repository.Root, "reports/receiver-cabin-curtain/shielding.csv")).Skip(1)
            .Select(l => l.Split(',')).Where(r => r[1] == specimen).MinBy(r => Math.Abs(Number(r[2]) - hertz))!;
        return FormattableString.Invariant(
            $"{Number(row[9]):0.0} dB ({Down(row[10]):0.0} to {-Down("-" + row[11]):0.0} dB, 95 %)");
    }

    private static double Down(string text) => Math.Floor(Number(text) * 10) / 10;

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static string[] Run(string example)
    {
        string demo = Commands.Shell.Demo.Replace("\\", "\\\\", StringComparison.Ordinal);
        Assert.Contains("\"autumn-lots\"", example, StringComparison.Ordinal);
        var compilation = CSharpCompilation.Create(
            "example" + Guid.NewGuid().ToString("N"),
            [Parsed(example.Replace("autumn-lots", demo, StringComparison.Ordinal)), Parsed(Beside)],
            References(),
            new CSharpCompilationOptions(OutputKind.ConsoleApplication, nullableContextOptions: NullableContextOptions.Enable));
        using var program = new MemoryStream();
        ImmutableArray<Diagnostic> told = compilation.Emit(program).Diagnostics;
        Assert.Empty(told.Where(d => d.Severity >= DiagnosticSeverity.Warning).Select(d => d.ToString()));
        var assembly = Assembly.Load(program.ToArray());
        assembly.EntryPoint!.Invoke(null, [Array.Empty<string>()]);
        return [.. (List<string>)assembly.GetType("Console")!.GetProperty("Lines")!.GetValue(null)!];
    }

    private static SyntaxTree Parsed(string code) =>
        CSharpSyntaxTree.ParseText(code, new CSharpParseOptions(LanguageVersion.Latest));

    private static IEnumerable<MetadataReference> References() =>
        ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Select(path => MetadataReference.CreateFromFile(path));

    [GeneratedRegex("```csharp\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Code();
}
