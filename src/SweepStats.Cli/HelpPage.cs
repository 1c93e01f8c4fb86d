using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace SweepStats.Cli;

/// <summary>The help of the program and of a command; its list of commands too shows in brackets what may be left out.</summary>
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

    /// <summary>Has the library write its page, then prints it with brackets round arguments that may be left out.</summary>
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
    private string WithBrackets(string page)
    {
        foreach (Command command in _root.Subcommands)
        {
            foreach (Argument argument in command.Arguments.Where(argument => argument.Arity.MinimumNumberOfValues == 0))
            {
                string shown = $"<{argument.HelpName ?? argument.Name}>";
                page = page.Replace($"\n  {command.Name} {shown}  ", $"\n  {command.Name} [{shown}]", StringComparison.Ordinal);
            }
        }

        return page;
    }
}
