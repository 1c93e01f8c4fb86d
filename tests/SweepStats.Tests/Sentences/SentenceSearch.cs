using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SweepStats.Tests.Sentences;

/// <summary>Finds the sentences of a source file.</summary>
internal static class SentenceSearch
{
    // Errors of a programmer are read by no user.
    private static readonly string[] Programmers =
        ["ArgumentException", "ArgumentOutOfRangeException", "InvalidOperationException"];

    public static IEnumerable<SourceSentence> In(string source)
    {
        SyntaxNode root = CSharpSyntaxTree.ParseText(source, new CSharpParseOptions(LanguageVersion.Preview)).GetRoot();
        return from expression in root.DescendantNodes().OfType<ExpressionSyntax>()
               where !(expression.Parent is BinaryExpressionSyntax sum && sum.IsKind(SyntaxKind.AddExpression)
                   && SentenceText.Of(sum) is not null)
                   && !(expression.Parent is ArgumentSyntax { Parent.Parent: InvocationExpressionSyntax call }
                       && SentenceText.Of(call) is not null)
               let text = SentenceText.Of(expression)
               where text is not null && SentenceText.IsSentence(text) && IsRead(expression)
               select new SourceSentence(Place(expression), SentenceText.OneLine(text), SentenceConditions.Of(expression));
    }

    private static bool IsRead(ExpressionSyntax expression) =>
        !expression.Ancestors().Any(a => a is AttributeSyntax
            || (a is ObjectCreationExpressionSyntax made && Programmers.Contains(made.Type.ToString())));

    private static string Place(ExpressionSyntax expression)
    {
        string? type = expression.FirstAncestorOrSelf<TypeDeclarationSyntax>()?.Identifier.ValueText;
        string? member = expression.FirstAncestorOrSelf<MemberDeclarationSyntax>() switch
        {
            MethodDeclarationSyntax method => method.Identifier.ValueText,
            PropertyDeclarationSyntax property => property.Identifier.ValueText,
            FieldDeclarationSyntax field => field.Declaration.Variables[0].Identifier.ValueText,
            _ => null,
        };
        return member is null ? type ?? string.Empty : $"{type}.{member}";
    }
}
