using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SweepStats.Planted.Faults;

/// <summary>Every place of a file where faults can be planted.</summary>
internal static class Places
{
    /// <summary>Faults by place, in the order of the file; a place has one or several.</summary>
    public static IEnumerable<Fault[]> In(SyntaxTree tree, SemanticModel model) =>
        from node in tree.GetRoot().DescendantNodes()
        let faults = Of(node, model).ToArray()
        where faults.Length > 0 && !LeftOut.Is(node, model)
        select faults;

    private static IEnumerable<Fault> Of(SyntaxNode node, SemanticModel model) => node switch
    {
        StatementSyntax statement => StatementFaults.Of(statement),
        RelationalPatternSyntax pattern => OperatorFaults.Of(pattern),
        ExpressionSyntax expression => OfExpression(expression, model),
        _ => [],
    };

    private static IEnumerable<Fault> OfExpression(ExpressionSyntax expression, SemanticModel model)
    {
        IEnumerable<Fault> own = expression switch
        {
            BinaryExpressionSyntax sum => OperatorFaults.Of(sum, model),
            AssignmentExpressionSyntax change => OperatorFaults.Of(change, model),
            LiteralExpressionSyntax literal => ConstantFaults.Of(literal, model),
            InvocationExpressionSyntax call => CallFaults.Of(call, model),
            _ => [],
        };
        return StatementFaults.IsCondition(expression) ? own.Concat(StatementFaults.OfCondition(expression)) : own;
    }
}
