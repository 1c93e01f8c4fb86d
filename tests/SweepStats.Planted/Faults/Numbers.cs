using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SweepStats.Planted.Faults;

/// <summary>What kind of number an expression is.</summary>
internal static class Numbers
{
    /// <summary>An int, a long or another whole number.</summary>
    public static bool IsWhole(ITypeSymbol? type) =>
        type?.SpecialType is >= SpecialType.System_SByte and <= SpecialType.System_UInt64;

    /// <summary>A double or a float.</summary>
    public static bool IsReal(ITypeSymbol? type) => type?.SpecialType is SpecialType.System_Double or SpecialType.System_Single;

    /// <summary>Either of them.</summary>
    public static bool IsNumber(ITypeSymbol? type) => IsWhole(type) || IsReal(type);

    /// <summary>A literal one.</summary>
    public static bool IsOne(ExpressionSyntax expression) =>
        expression.IsKind(SyntaxKind.NumericLiteralExpression) && expression.ToString() == "1";
}
