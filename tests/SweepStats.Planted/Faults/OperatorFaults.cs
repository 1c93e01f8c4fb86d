using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SweepStats.Planted.Faults;

/// <summary>Another operator between two values.</summary>
internal static class OperatorFaults
{
    public static IEnumerable<Fault> Of(BinaryExpressionSyntax sum, SemanticModel model)
    {
        foreach (string other in Others(sum, model))
        {
            yield return Fault.In(sum, sum.OperatorToken.Span, other);
        }

        if (sum.Kind() is SyntaxKind.AddExpression or SyntaxKind.SubtractExpression && Numbers.IsOne(sum.Right)
            && Numbers.IsWhole(model.GetTypeInfo(sum).Type))
        {
            yield return Fault.In(sum, sum.Span, sum.Left.ToString());
        }
    }

    public static IEnumerable<Fault> Of(AssignmentExpressionSyntax change, SemanticModel model)
    {
        string? other = change.Kind() switch
        {
            SyntaxKind.AddAssignmentExpression => "-=",
            SyntaxKind.SubtractAssignmentExpression => "+=",
            SyntaxKind.MultiplyAssignmentExpression => "/=",
            SyntaxKind.DivideAssignmentExpression => "*=",
            _ => null,
        };
        return other is not null && Numbers.IsNumber(model.GetTypeInfo(change.Left).Type)
            ? [Fault.In(change, change.OperatorToken.Span, other)]
            : [];
    }

    public static IEnumerable<Fault> Of(RelationalPatternSyntax pattern) =>
        Relation(pattern.OperatorToken.Text).Select(other => Fault.In(pattern.Parent!, pattern.OperatorToken.Span, other));

    private static string[] Others(BinaryExpressionSyntax sum, SemanticModel model) => sum.OperatorToken.Text switch
    {
        "==" => ["!="],
        "!=" => ["=="],
        "&&" => ["||"],
        "||" => ["&&"],
        "<" or "<=" or ">" or ">=" => Relation(sum.OperatorToken.Text),
        _ when !Numbers.IsNumber(model.GetTypeInfo(sum).Type) => [],
        "+" => ["-"],
        "-" => ["+"],
        "*" => ["/"],
        "/" => ["*"],
        _ => [],
    };

    // Turned round, and shifted onto or off the limit.
    private static string[] Relation(string right) => right switch
    {
        "<" => [">", "<="],
        "<=" => [">=", "<"],
        ">" => ["<", ">="],
        ">=" => ["<=", ">"],
        _ => [],
    };
}
