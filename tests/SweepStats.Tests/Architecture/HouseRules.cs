using System.Collections.Immutable;
using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using SweepStats.Checks;
using Xunit;

namespace SweepStats.Tests.Architecture;

/// <summary>The rules of DEVELOPERS.md that a machine can keep.</summary>
public sealed partial class HouseRules
{
    // A folder of the core uses only those before it.
    private static readonly string[] CoreOrder =
        ["Storage", "Statistics", "Quantities", "Uncertainty", "Sweeps", "Alignment", "Floor", "Leakage", "Repeats", "Clipping",
            "Linearity", "Doubts", "Shielding", "Bands", "Budgets", "Lots", "Choice", "Planning", "Checks", "Verdicts", "Fields",
            "Trends", "Receivers"];

    private const int Columns = 130;

    private static readonly (string Project, string[] MayUse)[] Projects =
    [
        ("SweepStats", []),
        ("SweepStats.Rehearsal", ["SweepStats"]),
        ("SweepStats.Files", ["SweepStats"]),
        ("SweepStats.Report", ["SweepStats"]),
        ("SweepStats.Library", ["SweepStats", "SweepStats.Files", "SweepStats.Report"]),
        ("SweepStats.Cli", ["SweepStats", "SweepStats.Files", "SweepStats.Report", "SweepStats.Rehearsal"]),
    ];

    private static readonly (string Package, string Project)[] PackageHomes =
    [
        ("MathNet", "SweepStats"), ("CsvHelper", "SweepStats.Files"), ("Tomlyn", "SweepStats.Files"),
        ("OxyPlot", "SweepStats.Report"), ("SkiaSharp", "SweepStats.Report"), ("System.CommandLine", "SweepStats.Cli"),
    ];

    [Fact]
    public void AFolderOfTheCoreUsesOnlyFoldersBeforeIt()
    {
        var upward = from file in SourceTree.Files("src/SweepStats")
                     let folder = Path.GetRelativePath(Path.Combine(SourceTree.Root, "src/SweepStats"), file)
                         .Split(Path.DirectorySeparatorChar)[0]
                     let own = Array.IndexOf(CoreOrder, folder)
                     where own >= 0
                     from used in OwnNamespaces(file)
                     let other = Array.IndexOf(CoreOrder, used)
                     where other < 0 || other > own
                     select $"{file} uses {used}";
        Assert.Empty(upward);
    }

    [Fact]
    public void EveryFolderOfTheCoreHasItsPlaceInTheOrder() => Assert.Empty(
        Directory.EnumerateDirectories(Path.Combine(SourceTree.Root, "src/SweepStats")).Select(Path.GetFileName)
            .Except(CoreOrder.Append("bin").Append("obj")));

    [Fact]
    public void ProjectsReferOnlyInTheAllowedDirection()
    {
        foreach ((string project, string[] mayUse) in Projects)
        {
            string text = File.ReadAllText(Path.Combine(SourceTree.Root, "src", project, project + ".csproj"));
            var used = ProjectReference().Matches(text).Select(m => m.Groups[1].Value);
            Assert.Empty(used.Except(mayUse));
        }
    }

    [Fact]
    public void EachOutsidePackageLivesInOneProject()
    {
        foreach ((string project, _) in Projects)
        {
            foreach (string file in SourceTree.Files("src/" + project))
            {
                string text = File.ReadAllText(file);
                foreach ((string package, string home) in PackageHomes.Where(p => p.Project != project))
                {
                    Assert.False(text.Contains($"using {package}", StringComparison.Ordinal)
                        || text.Contains($" {package}.", StringComparison.Ordinal),
                        $"{file} uses {package}, whose home is {home}.");
                }
            }
        }
    }

    [Fact]
    public void TheCoreShowsNoTypeOfAnotherLibrary()
    {
        var foreign = from type in typeof(Analysis).Assembly.GetExportedTypes()
                      from member in type.GetMembers(
                          BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
                      from shown in Shown(member)
                      where shown.Namespace is { } space && !space.StartsWith("System", StringComparison.Ordinal)
                          && !space.StartsWith("SweepStats", StringComparison.Ordinal)
                      select $"{type.Name}.{member.Name} shows {shown.FullName}";
        Assert.Empty(foreign);
    }

    [Fact]
    public void NothingPublicInTheCoreCanBeChangedFromOutside()
    {
        var open = from type in typeof(Analysis).Assembly.GetExportedTypes()
                   from property in type.GetProperties(
                       BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
                   where property.SetMethod is { IsPublic: true } set
                       && !set.ReturnParameter.GetRequiredCustomModifiers().Any(m => m.Name == "IsExternalInit")
                   select $"{type.Name}.{property.Name}";
        Assert.Empty(open);
        Assert.Empty(typeof(Analysis).Assembly.GetExportedTypes().SelectMany(t => t.GetFields())
            .Where(f => f is { IsInitOnly: false, IsLiteral: false, IsSpecialName: false } && !f.DeclaringType!.IsEnum));
    }

    [Fact]
    public void EveryCheckStandsInTheChecklistOnceUnderItsOwnCode()
    {
        ImmutableArray<Type> checks =
            [.. typeof(ICheck).Assembly.GetTypes().Where(t => t.IsAssignableTo(typeof(ICheck)) && t.IsClass)];
        Assert.Equal(checks.Select(t => t.Name).Order(), Checklist.All.Select(c => c.GetType().Name).Order());
        Assert.Equal(Checklist.All.Length, Checklist.All.Select(c => c.Code).Distinct().Count());
        Assert.All(Checklist.All, c => Assert.Matches("^[a-z]+(-[a-z]+)*$", c.Code));
    }

    [Fact]
    public void NoLineIsLongerThanAScreenIsWide() => Assert.Empty(
        from file in SourceTree.Files("src").Concat(SourceTree.Files("tests"))
        from line in File.ReadLines(file).Select((text, i) => (Text: text, Number: i + 1))
        where line.Text.Length > Columns
        select $"{file}:{line.Number} has {line.Text.Length} columns; .editorconfig asks for {Columns}");

    [Fact]
    public void WhatAFileUsesStandsInOrder() => Assert.Empty(
        from file in SourceTree.Files("src").Concat(SourceTree.Files("tests"))
        let used = File.ReadLines(file).TakeWhile(line => !line.StartsWith("namespace ", StringComparison.Ordinal))
            .Where(line => PlainUsing().IsMatch(line)).ToArray()
        where !used.SequenceEqual(used.OrderBy(line => !line.StartsWith("using System", StringComparison.Ordinal))
            .ThenBy(line => line.TrimEnd(';'), StringComparer.OrdinalIgnoreCase))
        select $"{file}: {string.Join(' ', used)}");

    [Fact]
    public void NoParameterIsATupleThatWantsAName() => Assert.Empty(
        from file in SourceTree.Files("src")
        from parameter in CSharpSyntaxTree.ParseText(File.ReadAllText(file)).GetRoot().DescendantNodes().OfType<ParameterSyntax>()
        where parameter.Type?.DescendantNodesAndSelf().OfType<TupleTypeSyntax>().Any() == true
        select $"{file}: {parameter}");

    [Fact]
    public void NoFileIsNamedForWantOfAName() => Assert.Empty(
        SourceTree.Files("src").Select(f => Path.GetFileNameWithoutExtension(f)!)
            .Where(n => Vague().IsMatch(n)));

    [Fact]
    public void NoOwnNamespaceHidesBehindAGlobalUsing() => Assert.Empty(
        SourceTree.Files("src").Where(f => File.ReadAllText(f).Contains("global using", StringComparison.Ordinal)));

    private static IEnumerable<string> OwnNamespaces(string file) =>
        OwnUsing().Matches(File.ReadAllText(file)).Select(m => m.Groups[1].Value);

    private static IEnumerable<Type> Shown(MemberInfo member) => member switch
    {
        MethodInfo m => m.GetParameters().Select(p => p.ParameterType).Append(m.ReturnType).SelectMany(Parts),
        PropertyInfo p => Parts(p.PropertyType),
        ConstructorInfo c => c.GetParameters().SelectMany(p => Parts(p.ParameterType)),
        _ => [],
    };

    private static IEnumerable<Type> Parts(Type type) =>
        type.IsGenericType ? type.GetGenericArguments().SelectMany(Parts).Append(type) : [type];

    [GeneratedRegex(@"ProjectReference Include=""\.\./([^/]+)/")]
    private static partial Regex ProjectReference();

    [GeneratedRegex(@"^using SweepStats\.([A-Za-z]+)", RegexOptions.Multiline)]
    private static partial Regex OwnUsing();

    [GeneratedRegex(@"^using [A-Z][\w.]*;$")]
    private static partial Regex PlainUsing();

    [GeneratedRegex("(Helper|Util|Utils|Manager|Common|Service|Processor|Extensions)$")]
    private static partial Regex Vague();
}
