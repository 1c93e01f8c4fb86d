using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SweepStats.Planted.Faults;

/// <summary>Another call, or none: the smaller for the larger, an argument for the result.</summary>
internal static class CallFaults
{
    private static readonly string[][] Pairs =
    [
        ["Min", "Max"], ["MinBy", "MaxBy"], ["Floor", "Ceiling"], ["Any", "All"], ["First", "Last"], ["Take", "Skip"],
        ["TakeWhile", "SkipWhile"], ["OrderBy", "OrderByDescending"], ["Order", "OrderDescending"], ["Sin", "Cos"],
    ];

    public static IEnumerable<Fault> Of(InvocationExpressionSyntax call, SemanticModel model)
    {
        if (Name(call) is { } name && Other(name.Identifier.Text) is { } other)
        {
            yield return Fault.In(call, name.Identifier.Span, other);
        }

        ITypeSymbol? result = model.GetTypeInfo(call).Type;
        if (Numbers.IsNumber(result) && call.ArgumentList.Arguments.Select(a => a.Expression)
            .FirstOrDefault(a => SymbolEqualityComparer.Default.Equals(model.GetTypeInfo(a).Type, result)) is { } argument)
        {
            yield return Fault.In(call, call.Span, $"({argument})");
        }
    }

    private static SimpleNameSyntax? Name(InvocationExpressionSyntax call) => call.Expression switch
    {
        MemberAccessExpressionSyntax member => member.Name,
        SimpleNameSyntax name => name,
        _ => null,
    };

    private static string? Other(string name) =>
        Pairs.FirstOrDefault(pair => pair.Contains(name)) is { } pair ? pair.First(n => n != name) : null;
}
