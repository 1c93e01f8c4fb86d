using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace SweepStats.Cli;

/// <summary>The help of the program and of a command, in which the list of commands shows what may be left out in brackets too.</summary>
internal sealed class HelpPage : SynchronousCommandLineAction
{
    private readonly SynchronousCommandLineAction _written;
    private readonly RootCommand _root;

    private HelpPage(SynchronousCommandLineAction written, RootCommand root) => (_written, _root) = (written, root);

    /// <summary>Has a program answer --help by it.</summary>
    public static void Of(RootCommand root)
    {
        HelpOption help = root.Options.OfType<HelpOption>().Single();
        help.Action = new HelpPage((SynchronousCommandLineAction)help.Action!, root);
    }

    /// <summary>Who asks for help need not have got the rest right.</summary>
    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        TextWriter output = parseResult.InvocationConfiguration.Output;
        using var page = new StringWriter();
        parseResult.InvocationConfiguration.Output = page;
        int code = _written.Invoke(parseResult);
        parseResult.InvocationConfiguration.Output = output;
        output.Write(WithBrackets(page.ToString()));
        return code;
    }

    // The brackets take the room of two of the blanks behind.
    private string WithBrackets(string page) => _root.Subcommands
        .SelectMany(command => command.Arguments.Where(argument => argument.Arity.MinimumNumberOfValues == 0).Select(argument => (command.Name, Argument: $"<{argument.HelpName ?? argument.Name}>")))
        .Aggregate(page, (text, optional) => text.Replace($"\n  {optional.Name} {optional.Argument}  ", $"\n  {optional.Name} [{optional.Argument}]", StringComparison.Ordinal));
}
