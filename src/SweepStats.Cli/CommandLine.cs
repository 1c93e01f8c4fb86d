using System.CommandLine;
using SweepStats.Cli.Commands;
using SweepStats.Cli.Look;

namespace SweepStats.Cli;

/// <summary>The whole program: words in, exit code out.</summary>
internal static class CommandLine
{
    public static int Run(string[] args, Terminal terminal)
    {
        var root = new RootCommand("How far a measured shielding number can be trusted: floor, reference and covered sweeps in, claims that hold out.")
        {
            RunCommand.Create(terminal),
            CheckCommand.Create(terminal),
            LookCommand.Create(terminal),
            LotsCommand.Create(terminal),
            ChooseCommand.Create(terminal),
            PlanCommand.Create(terminal),
            RehearseCommand.Create(terminal),
            InitCommand.Create(terminal),
        };
        ParseResult parsed = root.Parse(args.Length == 0 ? ["--help"] : args);
        if (parsed.Errors.Count > 0)
        {
            foreach (string message in parsed.Errors.Select(e => e.Message.ReplaceLineEndings(" ").Replace('\t', ' ')).Distinct())
            {
                terminal.Error.WriteLine($"sweepstats: {PrintedText.Of(message).TrimEnd('.')}; see 'sweepstats {Named(parsed)}--help'");
            }

            return ExitCode.BadInput;
        }

        return Invoke(parsed, terminal);
    }

    // A person at a bench can do nothing with a stack trace; the one sentence says whose fault it is.
    private static int Invoke(ParseResult parsed, Terminal terminal)
    {
        try
        {
            return parsed.Invoke(new InvocationConfiguration { Output = terminal.Out, Error = terminal.Error, EnableDefaultExceptionHandler = false });
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            terminal.Error.WriteLine($"sweepstats: {e.Message.ReplaceLineEndings(" ")}");
            return ExitCode.BadInput;
        }
#pragma warning disable CA1031 // The last line of defence: whatever was not foreseen ends as one line and exit code 3.
        catch (Exception e)
#pragma warning restore CA1031
        {
            // Work in threads wraps what went wrong; the inner message is the telling one.
            e = e is AggregateException { InnerException: { } inner } ? inner : e;
            terminal.Error.WriteLine(
                $"sweepstats: internal error: {e.GetType().Name}: {e.Message.ReplaceLineEndings(" ")} This is a defect of the program, not of your data; please report it with the command line.");
            return ExitCode.InternalError;
        }
    }

    private static string Named(ParseResult parsed) =>
        parsed.CommandResult.Command is RootCommand ? string.Empty : parsed.CommandResult.Command.Name + " ";
}
