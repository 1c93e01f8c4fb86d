using System.Reflection;
using SweepStats.Library;
using Xunit;

namespace SweepStats.Acceptance.Library;

/// <summary>
/// What users of the packages can call stands in reports/public-surface.md. A change of it is seen, and meant.
/// </summary>
public sealed class PublicSurface
{
    private const string Kept = "reports/public-surface.md";

    private const BindingFlags Declared =
        BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    // What the compiler makes of a record says nothing of its own.
    private static readonly string[] OfEveryRecord =
        ["Equals", "GetHashCode", "Deconstruct", "<Clone>$", "op_Equality", "op_Inequality", "ToString"];

    [Fact]
    public void IsTheListThatIsKept()
    {
        string list = string.Join('\n', Lines()) + "\n";
        string fresh = Path.Combine(AppContext.BaseDirectory, "public-surface.md");
        File.WriteAllText(fresh, list);
        Assert.True(list == File.ReadAllText(Path.Combine(Repository.Root, Kept)).ReplaceLineEndings("\n"),
            $"Read what changed in {fresh}, then copy it to {Kept}.");
    }

    private static IEnumerable<string> Lines()
    {
        yield return "# What the packages show";
        foreach (Assembly package in Packages())
        {
            yield return $"\n## {package.GetName().Name}\n";
            foreach (Type type in package.GetExportedTypes().OrderBy(t => t.FullName, StringComparer.Ordinal))
            {
                yield return $"- **{Name(type)}**";
                foreach (string member in Members(type).Distinct().Order(StringComparer.Ordinal))
                {
                    yield return $"  - {member}";
                }
            }
        }
    }

    private static Assembly[] Packages() =>
        [typeof(Measurement).Assembly, typeof(Analysis).Assembly, typeof(SweepStats.Files.ReadFault).Assembly,
            typeof(SweepStats.Report.ReportBuilder).Assembly];

    private static string[] Members(Type type) => type.IsEnum ? Enum.GetNames(type) :
    [
        .. type.GetConstructors().Select(c => $"new({Parameters(c)})"),
        .. type.GetProperties(Declared).Where(p => p.Name != "EqualityContract")
            .Select(p => $"{p.Name}: {Name(p.PropertyType)}"),
        .. type.GetFields(Declared).Select(f => $"{f.Name}: {Name(f.FieldType)}"),
        .. type.GetMethods(Declared).Where(m => !IsAccessor(m) && !OfEveryRecord.Contains(m.Name))
            .Select(m => $"{m.Name}({Parameters(m)}): {Name(m.ReturnType)}"),
    ];

    private static bool IsAccessor(MethodInfo method) =>
        method.IsSpecialName && (method.Name.StartsWith("get_", StringComparison.Ordinal)
            || method.Name.StartsWith("set_", StringComparison.Ordinal));

    private static string Parameters(MethodBase method) =>
        string.Join(", ", method.GetParameters().Select(p => $"{Name(p.ParameterType)} {p.Name}"));

    private static string Name(Type type) => type.IsGenericType
        ? $"{Plain(type).Split('`')[0]}<{string.Join(", ", type.GetGenericArguments().Select(Name))}>"
        : Plain(type);

    private static string Plain(Type type) => type.IsNested && !type.IsGenericParameter
        ? $"{Plain(type.DeclaringType!)}.{type.Name}" : type.Name;
}
