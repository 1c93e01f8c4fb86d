using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Text;

namespace SweepStats.Planted.Faults;

/// <summary>One fault that can be planted: a stretch of one file, and what stands there instead.</summary>
/// <param name="File">Path below src/SweepStats, with forward slashes.</param>
/// <param name="Line">Line of the stretch, from 1.</param>
/// <param name="Stretch">What is replaced.</param>
/// <param name="Instead">What stands there with the fault.</param>
/// <param name="Right">The expression or statement around it, on one line.</param>
/// <param name="Faulty">The same with the fault.</param>
internal sealed record Fault(string File, int Line, TextSpan Stretch, string Instead, string Right, string Faulty)
{
    /// <summary>Room of the files that stand in no folder: the flow itself.</summary>
    public const string Flow = "flow";

    /// <summary>Folder of the core.</summary>
    public string Room => File.Contains('/') ? File[..File.IndexOf('/')] : Flow;

    /// <summary>What makes it the same fault after lines have moved.</summary>
    public string Key => $"{File}: {Right} → {Faulty}";

    /// <summary>A fault that replaces a stretch of a node.</summary>
    /// <param name="shown">The expression or statement to show.</param>
    /// <param name="stretch">Within it, what is replaced.</param>
    /// <param name="instead">What stands there with the fault.</param>
    public static Fault In(SyntaxNode shown, TextSpan stretch, string instead)
    {
        string text = shown.SyntaxTree.ToString();
        string faulty = text[shown.SpanStart..stretch.Start] + instead + text[stretch.End..shown.Span.End];
        return new Fault(shown.SyntaxTree.FilePath, shown.SyntaxTree.GetLineSpan(stretch).StartLinePosition.Line + 1, stretch,
            instead, OneLine(shown.ToString()), OneLine(faulty));
    }

    private static string OneLine(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
