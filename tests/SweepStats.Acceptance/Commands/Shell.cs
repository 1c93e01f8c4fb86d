using SweepStats.Cli;

namespace SweepStats.Acceptance.Commands;

/// <summary>Runs the program in process and keeps what it printed.</summary>
internal static class Shell
{
    public static string Demo => Path.Combine(Repository.Root, "fixtures/campaigns/receiver-cabin-curtain");

    public static (int Code, string Out, string Error) Run(params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        int code = CommandLine.Run(args, new Terminal(output, error, Interactive: false));
        return (code, output.ToString(), error.ToString());
    }
}
