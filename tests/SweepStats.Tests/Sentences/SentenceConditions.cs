using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SweepStats.Tests.Sentences;

/// <summary>The conditions under which a place of the source is reached.</summary>
internal static class SentenceConditions
{
    /// <summary>Conditions from the outermost in, those of the callers within the same type before them.</summary>
    public static string[] Of(SyntaxNode place) => Of(place, callers: 2);

    private static string[] Of(SyntaxNode place, int callers)
    {
        MemberDeclarationSyntax? member = place.FirstAncestorOrSelf<MemberDeclarationSyntax>();
        string[] own = [.. Within(place, member).Reverse()];
        return callers == 0 || member is not MethodDeclarationSyntax method ? own : [.. Called(method, callers - 1), .. own];
    }

    // A method that is called once prints under the conditions of that call.
    private static string[] Called(MethodDeclarationSyntax method, int callers)
    {
        InvocationExpressionSyntax[] calls = [.. method.Parent!.DescendantNodes().OfType<InvocationExpressionSyntax>()
            .Where(c => c.Expression is IdentifierNameSyntax name && name.Identifier.ValueText == method.Identifier.ValueText
                && !method.Contains(c))];
        return calls.Length == 1 ? Of(calls[0], callers) : [];
    }

    private static IEnumerable<string> Within(SyntaxNode place, MemberDeclarationSyntax? member)
    {
        for (SyntaxNode at = place; at.Parent is { } above && at != member; at = above)
        {
            foreach (string condition in Between(at, above))
            {
                yield return condition;
            }
        }
    }

    private static IEnumerable<string> Between(SyntaxNode at, SyntaxNode above) => above switch
    {
        IfStatementSyntax chosen when at == chosen.Statement => [Text(chosen.Condition)],
        IfStatementSyntax chosen when at == chosen.Else => [Not(chosen.Condition)],
        ConditionalExpressionSyntax chosen when at == chosen.WhenTrue => [Text(chosen.Condition)],
        ConditionalExpressionSyntax chosen when at == chosen.WhenFalse => [Not(chosen.Condition)],
        SwitchExpressionArmSyntax arm when at == arm.Expression => [Arm(arm)],
        SwitchSectionSyntax section =>
            [$"{Text(((SwitchStatementSyntax)section.Parent!).Expression)} is "
                + $"{string.Join(" or ", section.Labels.Select(l => Text(l)))}"],
        BlockSyntax block when at is StatementSyntax statement => Left(block, statement).Reverse(),
        _ => [],
    };

    private static string Arm(SwitchExpressionArmSyntax arm)
    {
        var whole = (SwitchExpressionSyntax)arm.Parent!;
        string pattern = arm.Pattern is DiscardPatternSyntax ? "none of the others" : Text(arm.Pattern);
        return $"{Text(whole.GoverningExpression)} is "
            + $"{pattern}{(arm.WhenClause is { } when ? " and " + Text(when.Condition) : string.Empty)}";
    }

    // What an earlier statement of the block returned for is not so here.
    private static IEnumerable<string> Left(BlockSyntax block, StatementSyntax before) =>
        block.Statements.TakeWhile(s => s != before).OfType<IfStatementSyntax>().Where(i => i.Else is null && Leaves(i.Statement))
            .Select(i => Not(i.Condition));

    private static bool Leaves(StatementSyntax statement) => statement switch
    {
        BlockSyntax block => block.Statements.LastOrDefault() is { } last && Leaves(last),
        YieldStatementSyntax end => end.IsKind(SyntaxKind.YieldBreakStatement),
        ReturnStatementSyntax or ThrowStatementSyntax or ContinueStatementSyntax => true,
        _ => false,
    };

    private static string Not(SyntaxNode condition) => $"not ({Text(condition)})";

    private static string Text(SyntaxNode node) => SentenceText.OneLine(node.ToString());
}
