using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;
using SweepStats.Planted.Trials;

namespace SweepStats.Planted.Faults;

/// <summary>The core's source, and the assemblies that come of it with a fault.</summary>
internal sealed class CoreSource
{
    /// <summary>File name of the assembly.</summary>
    public const string AssemblyFile = "SweepStats.Core.dll";

    private const string Built = "built/";

    private static readonly CSharpParseOptions Parsing = new(LanguageVersion.Latest);
    private readonly CSharpCompilation right;
    private readonly Lazy<string> kept;

    private CoreSource(CSharpCompilation right)
    {
        this.right = right;
        // What the build writes names the commit, and changes with it.
        Version = Hash(right.SyntaxTrees.Where(tree => !IsBuilt(tree)).Select(tree => tree.FilePath + tree));
        kept = new Lazy<string>(KeptFolder);
    }

    /// <summary>Reads it as it stands.</summary>
    public static CoreSource Read()
    {
        SyntaxTree[] trees =
        [
            .. Repository.Sources().Select(file => Tree(Repository.BelowCore(file), File.ReadAllText(file))),
            .. Repository.BuiltSources().Select(file => Tree(Built + Path.GetFileName(file), File.ReadAllText(file))),
        ];
        var compilation = CSharpCompilation.Create("SweepStats.Core", trees, References(), new CSharpCompilationOptions(
            OutputKind.DynamicallyLinkedLibrary, optimizationLevel: OptimizationLevel.Release, checkOverflow: true,
            nullableContextOptions: NullableContextOptions.Enable, deterministic: true));
        return new CoreSource(compilation);
    }

    /// <summary>Changes with the source.</summary>
    public string Version { get; }

    /// <summary>Faults by place, places in the order of the files.</summary>
    public ImmutableArray<Fault[]> Places() =>
    [
        .. right.SyntaxTrees.Where(tree => !IsBuilt(tree))
            .SelectMany(tree => Faults.Places.In(tree, right.GetSemanticModel(tree))),
    ];

    /// <summary>Whether the file compiles with a fault.</summary>
    public bool Compiles(Fault fault)
    {
        CSharpCompilation planted = With(fault);
        SyntaxTree tree = planted.SyntaxTrees.First(t => t.FilePath == fault.File);
        return Errors(planted.GetSemanticModel(tree).GetDiagnostics()).Length == 0;
    }

    /// <summary>Puts the assembly with a fault, or without one, into a folder.</summary>
    /// <remarks>To compile takes longer than most tests: what was compiled of the same source is kept.</remarks>
    /// <exception cref="InvalidOperationException">It does not compile.</exception>
    public void Emit(Fault? fault, string folder)
    {
        string compiled = Path.Combine(kept.Value, Hash([$"{fault?.Key} {fault?.Stretch}"]) + ".dll");
        if (!File.Exists(compiled))
        {
            Compile(fault, compiled);
        }

        File.Copy(compiled, Path.Combine(folder, AssemblyFile), overwrite: true);
    }

    private void Compile(Fault? fault, string path)
    {
        using var assembly = new MemoryStream();
        Diagnostic[] errors = Errors((fault is null ? right : With(fault)).Emit(assembly).Diagnostics);
        if (errors.Length > 0)
        {
            throw new InvalidOperationException($"{fault?.Key} does not compile: {errors[0]}");
        }

        File.WriteAllBytes(path, assembly.ToArray());
    }

    // One folder for the source as it stands; those of other sources go.
    private string KeptFolder()
    {
        string all = Path.Combine(Repository.Bin, "cores");
        string own = Path.Combine(all, Version);
        foreach (string old in Directory.Exists(all) ? Directory.GetDirectories(all).Where(d => d != own) : [])
        {
            Directory.Delete(old, recursive: true);
        }

        Directory.CreateDirectory(own);
        return own;
    }

    private static string Hash(IEnumerable<string> texts)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (string text in texts)
        {
            hash.AppendData(Encoding.UTF8.GetBytes(text));
        }

        return Convert.ToHexString(hash.GetCurrentHash())[..16];
    }

    private CSharpCompilation With(Fault fault)
    {
        SyntaxTree tree = right.SyntaxTrees.First(t => t.FilePath == fault.File);
        SourceText text = tree.GetText().WithChanges(new TextChange(fault.Stretch, fault.Instead));
        return right.ReplaceSyntaxTree(tree, CSharpSyntaxTree.ParseText(text, Parsing, tree.FilePath));
    }

    private static SyntaxTree Tree(string path, string text)
    {
        SyntaxTree tree = CSharpSyntaxTree.ParseText(text, Parsing, path);
        TextChange[] changes =
            [.. tree.GetRoot().DescendantNodes().OfType<MethodDeclarationSyntax>().SelectMany(PlainExpression)];
        return changes.Length == 0
            ? tree
            : CSharpSyntaxTree.ParseText(tree.GetText().WithChanges(changes), Parsing, path);
    }

    // The generator of regular expressions is no part of the compiler: such a method makes its expression anew.
    private static IEnumerable<TextChange> PlainExpression(MethodDeclarationSyntax method)
    {
        if (method.AttributeLists.SelectMany(l => l.Attributes).FirstOrDefault(a => a.Name.ToString() == "GeneratedRegex") is not
            { } attribute)
        {
            return [];
        }

        return
        [
            new TextChange(method.AttributeLists[0].Span, ""),
            new TextChange(method.Modifiers.First(m => m.IsKind(SyntaxKind.PartialKeyword)).Span, ""),
            new TextChange(method.SemicolonToken.Span, $"=> new Regex{attribute.ArgumentList};"),
        ];
    }

    private static bool IsBuilt(SyntaxTree tree) => tree.FilePath.StartsWith(Built, StringComparison.Ordinal);

    private static Diagnostic[] Errors(IEnumerable<Diagnostic> all) =>
        [.. all.Where(d => d.Severity == DiagnosticSeverity.Error)];

    private static IEnumerable<MetadataReference> References() =>
        ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Where(path => !Path.GetFileName(path).StartsWith("SweepStats.", StringComparison.Ordinal))
            .Select(path => MetadataReference.CreateFromFile(path));
}
