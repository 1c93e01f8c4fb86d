using System.CommandLine;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Receivers;
using SweepStats.Files.Results;
using SweepStats.Receivers;
using SweepStats.Report.Receivers;

namespace SweepStats.Cli.Commands;

/// <summary>sweepstats receiver: what a receiver that falls silent under the cover, or does not, shows of the
/// shielding.</summary>
internal static class ReceiverCommand
{
    /// <summary>The command; gated, it exits with <see cref="ExitCode.Gated"/> unless the claim is supported.</summary>
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string?>("FILE")
        {
            Description = "Observations, one a row; without one, the options state a single observation",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var command = new Command(
            "receiver", "Say what a receiver that falls silent under the cover, or is still heard, shows of the shielding");
        command.Arguments.Add(file);
        var options = new ReceiverOptions(command);
        var single = new SingleObservation(command);
        command.SetAction(words => Run(new Asked(words, options, terminal), words.GetValue(file), single));
        return command;
    }

    private static int Run(Asked asked, string? file, SingleObservation single)
    {
        ImmutableArray<string> wrong = Objections(asked, file, single, out ReceiverFile? read);
        if (!wrong.IsEmpty)
        {
            foreach (string line in wrong)
            {
                asked.Terminal.Error.WriteLine(line);
            }

            return ExitCode.BadInput;
        }

        var test = ReceiverTest.Of(read?.Observations ?? [single.Of(asked.Words)], asked.Options.Question(asked.Words));
        if (asked.Target is { } target && !Write(asked, test, target, read?.Input))
        {
            return ExitCode.BadInput;
        }

        if (!asked.Options.IsQuiet(asked.Words))
        {
            Print(asked, test, read?.Input);
        }

        return asked.Options.IsGated(asked.Words) && test.Claim != ClaimOutcome.Supported ? ExitCode.Gated : ExitCode.Done;
    }

    private static ImmutableArray<string> Objections(Asked asked, string? file, SingleObservation single, out ReceiverFile? read)
    {
        read = null;
        if (asked.Target is { } target && ReportFolder.Refusal(target) is { } refusal)
        {
            return [refusal.ToString()];
        }

        if (single.Objection(asked.Words, file is not null) is { } objection)
        {
            return [$"sweepstats: {objection}; see 'sweepstats receiver --help'"];
        }

        if (asked.Options.IsGated(asked.Words) && asked.Options.Question(asked.Words).Claim is null)
        {
            return ["sweepstats: --gate needs a --claim; see 'sweepstats receiver --help'"];
        }

        read = file is null ? null : ReceiverFile.Read(file);
        return read is null ? [] : [.. read.Faults.Select(f => f.ToString())];
    }

    private static bool Write(Asked asked, ReceiverTest test, string target, InputFile? input)
    {
        var report = new WantedReport(target, Threads: 1)
        {
            Pages = () => ReceiverReport.Build(test, asked.Options.Png(asked.Words)),
            Tables =
            [
                new(ReceiverCsv.FileName, stream => ReceiverCsv.Write(test, stream)),
                new(ReceiverGroupsCsv.FileName, stream => ReceiverGroupsCsv.Write(test, stream)),
            ],
            Summary = (written, stream) => SummaryText.Write(test, input, written, stream),
        };
        return ReportOutput.Write(report, asked.Terminal);
    }

    private static void Print(Asked asked, ReceiverTest test, InputFile? input)
    {
        if (asked.Options.IsJson(asked.Words))
        {
            asked.Terminal.Out.WriteLine(SummaryText.Text(stream => SummaryText.Write(test, input, [], stream)));
            return;
        }

        IEnumerable<string> told = asked.Options.IsVerbose(asked.Words) ? ReceiverText.Whole(test)
            : ReceiverText.FirstScreen(test, asked.Target is null ? 0 : 1);
        asked.Terminal.Write(asked.Target is null ? told : told.Append($"Written: {asked.Target}"));
    }

    /// <param name="Words">The command line.</param>
    /// <param name="Options">What it may state.</param>
    /// <param name="Terminal">Where to write.</param>
    private sealed record Asked(ParseResult Words, ReceiverOptions Options, Terminal Terminal)
    {
        /// <summary>Folder for tables and chart; null where none is to be written.</summary>
        public string? Target => Options.Target(Words);
    }
}
