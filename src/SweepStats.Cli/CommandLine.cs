using System.CommandLine;
using SweepStats.Cli.Commands;
using SweepStats.Storage;

namespace SweepStats.Cli;

/// <summary>The whole program: words in, exit code out.</summary>
internal static class CommandLine
{
    private const string Help = "--help";

    /// <summary>Runs one command and gives its <see cref="ExitCode"/>; what goes wrong is told on the error stream.</summary>
    public static int Run(string[] args, Terminal terminal) =>
        Guarded(args, terminal with { Out = new HarmlessWriter(terminal.Out), Error = new HarmlessWriter(terminal.Error) });

    private static int Guarded(string[] args, Terminal terminal) => Guarded(terminal, () =>
    {
        var root = new RootCommand(
            "How far a measured shielding number can be trusted: floor, reference and covered sweeps in, claims that hold out.")
        {
            RunCommand.Create(terminal),
            CheckCommand.Create(terminal),
            LookCommand.Create(terminal),
            LotsCommand.Create(terminal),
            ChooseCommand.Create(terminal),
            FieldCommand.Create(terminal),
            CompareCommand.Create(terminal),
            PlanCommand.Create(terminal),
            ReceiverCommand.Create(terminal),
            RehearseCommand.Create(terminal),
            InitCommand.Create(terminal),
            GuideCommand.Create(terminal),
            CompletionCommand.Create(terminal),
        };
        HelpPage.Of(root);
        ParseResult parsed = root.Parse(WithoutHelp(args));
        string[] wrong = Completes(args) ? [] : [.. UsageErrors.Of(parsed)];
        foreach (string message in wrong)
        {
            terminal.Error.WriteLine($"sweepstats: {message}");
        }

        return wrong.Length > 0
            ? ExitCode.BadInput
            : parsed.Invoke(new InvocationConfiguration
            {
                Output = terminal.Out,
                Error = terminal.Error,
                EnableDefaultExceptionHandler = false,
            });
    });

    // A shell asks what fits into a line that is not complete yet.
    private static bool Completes(string[] args) =>
        args is [var first, ..] && first.StartsWith("[suggest", StringComparison.Ordinal);

    // "help" and "help COMMAND" are what people type first.
    private static string[] WithoutHelp(string[] args) => args switch
    {
        [] or ["help"] or ["help", "help" or Help] => [Help],
        ["help", .. var rest] => [.. rest, Help],
        _ => args,
    };

    // A person at a bench can do nothing with a stack trace; the one sentence says whose fault it is.
    private static int Guarded(Terminal terminal, Func<int> run)
    {
        try
        {
            return run();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            terminal.Error.WriteLine($"sweepstats: {e.Message.ReplaceLineEndings(" ")}");
            return ExitCode.BadInput;
        }
        catch (AggregateException e)
            when (e.Flatten().InnerExceptions.OfType<ScratchFileException>().FirstOrDefault() is { } file)
        {
            terminal.Error.WriteLine($"sweepstats: {file.Message.ReplaceLineEndings(" ")}");
            return ExitCode.BadInput;
        }
#pragma warning disable CA1031 // The last line of defence: whatever was not foreseen ends as one line and exit code 3.
        catch (Exception e)
#pragma warning restore CA1031
        {
            // Work in threads wraps what went wrong; the inner message is the telling one.
            e = e is AggregateException wrapped ? wrapped.Flatten().InnerExceptions[0] : e;
            terminal.Error.WriteLine(
                $"sweepstats: internal error: {e.GetType().Name}: {e.Message.ReplaceLineEndings(" ")} This is a defect of the "
                    + "program, not of your data; please report it with the command line.");
            return ExitCode.InternalError;
        }
    }
}
