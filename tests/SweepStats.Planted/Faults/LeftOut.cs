using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SweepStats.Planted.Faults;

/// <summary>
/// Where no fault is planted: text for people, checks of arguments that only throw, and constants that other projects have
/// taken into their own code.
/// </summary>
internal static class LeftOut
{
    public static bool Is(SyntaxNode node, SemanticModel model) => node.AncestorsAndSelf().Any(a => Itself(a, model));

    private static bool Itself(SyntaxNode node, SemanticModel model) => node switch
    {
        AttributeSyntax or EnumMemberDeclarationSyntax or InterpolatedStringExpressionSyntax => true,
        ThrowStatementSyntax or ThrowExpressionSyntax => true,
        ParameterSyntax { Default: not null } => true,
        FieldDeclarationSyntax field => IsConstant(field) && !IsPrivate(field),
        IfStatementSyntax { Else: null } check => OnlyThrows(check.Statement),
        ExpressionStatementSyntax { Expression: InvocationExpressionSyntax call } => IsArgumentCheck(call),
        MethodDeclarationSyntax method => IsText(model.GetDeclaredSymbol(method)?.ReturnType),
        LocalFunctionStatementSyntax method => IsText(model.GetDeclaredSymbol(method)?.ReturnType),
        PropertyDeclarationSyntax property => IsText(model.GetDeclaredSymbol(property)?.Type),
        ArgumentSyntax { NameColon.Name.Identifier.Text: "capacity" } => true,
        ExpressionSyntax expression => IsText(model.GetTypeInfo(expression).Type),
        _ => false,
    };

    private static bool IsConstant(FieldDeclarationSyntax field) => field.Modifiers.Any(SyntaxKind.ConstKeyword);

    private static bool IsPrivate(FieldDeclarationSyntax field) =>
        !field.Modifiers.Any(
            m => m.Kind() is SyntaxKind.PublicKeyword or SyntaxKind.InternalKeyword or SyntaxKind.ProtectedKeyword);

    private static bool OnlyThrows(StatementSyntax statement) => statement switch
    {
        BlockSyntax block => block.Statements.Count == 1 && OnlyThrows(block.Statements[0]),
        _ => statement is ThrowStatementSyntax,
    };

    private static bool IsArgumentCheck(InvocationExpressionSyntax call) =>
        call.Expression is MemberAccessExpressionSyntax member
            && member.Name.Identifier.Text.StartsWith("ThrowIf", StringComparison.Ordinal);

    private static bool IsText(ITypeSymbol? type) => type?.SpecialType == SpecialType.System_String;
}
