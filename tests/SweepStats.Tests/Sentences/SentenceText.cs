using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SweepStats.Tests.Sentences;

/// <summary>What a string expression of the source says.</summary>
internal static partial class SentenceText
{
    private const int FewestWords = 3;
    private const int LongestHole = 40;

    /// <summary>The text of a string, or of strings that are added together; null where it is not one.</summary>
    public static string? Of(ExpressionSyntax expression) => expression switch
    {
        LiteralExpressionSyntax literal when literal.IsKind(SyntaxKind.StringLiteralExpression) => literal.Token.ValueText,
        InterpolatedStringExpressionSyntax filled => string.Concat(filled.Contents.Select(Part)),
        BinaryExpressionSyntax sum when sum.IsKind(SyntaxKind.AddExpression) && (IsText(sum.Left) || IsText(sum.Right)) =>
            (Of(sum.Left) ?? Hole(sum.Left)) + (Of(sum.Right) ?? Hole(sum.Right)),
        InvocationExpressionSyntax call when Said(call) is { } said => Of(said),
        _ => null,
    };

    // What is only said in the culture that all results have.
    private static ExpressionSyntax? Said(InvocationExpressionSyntax call) =>
        (call.Expression.ToString(), call.ArgumentList.Arguments.Count)
            is ("FormattableString.Invariant", 1) or ("string.Create", 2)
            ? call.ArgumentList.Arguments[^1].Expression : null;

    /// <summary>Three words and more in a row, so neither a name nor a unit; and no members of JSON.</summary>
    public static bool IsSentence(string text) => !Json().IsMatch(text) &&
        Words().Count(Holes().Replace(text, " ")) >= FewestWords && text.Contains(' ', StringComparison.Ordinal);

    private static bool IsText(ExpressionSyntax expression) => Of(expression) is not null;

    private static string Part(InterpolatedStringContentSyntax part) => part switch
    {
        InterpolatedStringTextSyntax text => text.TextToken.ValueText,
        InterpolationSyntax filled => Hole(filled.Expression),
        _ => string.Empty,
    };

    private static string Hole(ExpressionSyntax expression) =>
        OneLine(expression.ToString()) is var text && text.Length > LongestHole ? "{…}" : "{" + text + "}";

    /// <summary>Without line ends and runs of blanks.</summary>
    public static string OneLine(string text) => Blanks().Replace(text, " ").Trim();

    [GeneratedRegex("""^\s*"\$?[a-zA-Z]+": """)]
    private static partial Regex Json();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();

    [GeneratedRegex(@"\{[^}]*\}")]
    private static partial Regex Holes();

    [GeneratedRegex(@"\b[a-zA-Z]{2,}\b")]
    private static partial Regex Words();
}
