using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SweepStats.Planted.Faults;

/// <summary>Another constant: a whole number moved by one, a real number a tenth larger, yes for no.</summary>
internal static class ConstantFaults
{
    public static IEnumerable<Fault> Of(LiteralExpressionSyntax literal, SemanticModel model) =>
        Others(literal, model).Select(other => Fault.In(Shown(literal), literal.Span, other));

    private static IEnumerable<string> Others(LiteralExpressionSyntax literal, SemanticModel model)
    {
        TypeInfo type = model.GetTypeInfo(literal);
        return literal.Kind() switch
        {
            SyntaxKind.TrueLiteralExpression => ["false"],
            SyntaxKind.FalseLiteralExpression => ["true"],
            SyntaxKind.NumericLiteralExpression when Numbers.IsReal(type.ConvertedType) => [Larger(literal.Token.Value)],
            SyntaxKind.NumericLiteralExpression when literal.Token.Value is int whole => Moved(whole),
            _ => [],
        };
    }

    private static string Larger(object? value)
    {
        double number = Convert.ToDouble(value, CultureInfo.InvariantCulture);
        return number == 0 ? "0.1" : (number * 1.1).ToString("R", CultureInfo.InvariantCulture);
    }

    private static IEnumerable<string> Moved(int value)
    {
        yield return (value + 1).ToString(CultureInfo.InvariantCulture);
        if (value > 0)
        {
            yield return (value - 1).ToString(CultureInfo.InvariantCulture);
        }
    }

    // A number alone says little: the expression or declaration that it stands in is shown.
    private static SyntaxNode Shown(LiteralExpressionSyntax literal) => literal.Parent switch
    {
        ArgumentSyntax { Parent: { Parent: { } call } } => call,
        EqualsValueClauseSyntax { Parent: { } named } => named,
        ArrowExpressionClauseSyntax { Parent: { } member } => member,
        PrefixUnaryExpressionSyntax { Parent: { } around } => around,
        { } parent => parent,
        null => literal,
    };
}
