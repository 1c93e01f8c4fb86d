using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SweepStats.Planted.Faults;

/// <summary>A condition turned round, a statement left out, a way out closed.</summary>
internal static class StatementFaults
{
    public static IEnumerable<Fault> OfCondition(ExpressionSyntax condition)
    {
        ExpressionSyntax bare = condition is ParenthesizedExpressionSyntax held ? held.Expression : condition;
        string turned = bare is PrefixUnaryExpressionSyntax not && not.IsKind(SyntaxKind.LogicalNotExpression)
            ? not.Operand.ToString()
            : $"!({bare})";
        return [Fault.In(bare, bare.Span, turned)];
    }

    /// <summary>Whether an expression says yes or no to a choice.</summary>
    public static bool IsCondition(ExpressionSyntax expression) => expression.Parent switch
    {
        IfStatementSyntax choice => choice.Condition == expression,
        ConditionalExpressionSyntax choice => choice.Condition == expression,
        WhileStatementSyntax loop => loop.Condition == expression,
        WhenClauseSyntax => true,
        WhereClauseSyntax => true,
        BinaryExpressionSyntax both => both.Kind() is SyntaxKind.LogicalAndExpression or SyntaxKind.LogicalOrExpression,
        _ => false,
    };

    public static IEnumerable<Fault> Of(StatementSyntax statement) => statement switch
    {
        ExpressionStatementSyntax or ContinueStatementSyntax => [Without(statement)],
        BreakStatementSyntax { Parent: not SwitchSectionSyntax } => [Without(statement)],
        IfStatementSyntax { Else: null } exit when Leaves(exit.Statement) => [Without(exit)],
        _ => [],
    };

    private static Fault Without(StatementSyntax statement) => Fault.In(statement, statement.Span, ";");

    private static bool Leaves(StatementSyntax statement) => statement switch
    {
        BlockSyntax block => block.Statements.Count > 0 && Leaves(block.Statements[^1]),
        _ => statement is ReturnStatementSyntax or ContinueStatementSyntax or BreakStatementSyntax,
    };
}
