using System.CommandLine;

namespace SweepStats.Cli.Commands;

/// <summary>sweepstats completion: what makes a shell complete the words of this program.</summary>
internal static class CompletionCommand
{
    // Each asks the program itself what fits at the cursor; where nothing does, the shell completes names of files.
    private const string Bash = """
        _sweepstats() {
            local found IFS=$'\n'
            found=$(sweepstats "[suggest:${COMP_POINT}]" "${COMP_LINE}" 2>/dev/null)
            COMPREPLY=($(compgen -W "${found}" -- "${COMP_WORDS[COMP_CWORD]}"))
        }
        complete -o bashdefault -o default -F _sweepstats sweepstats
        """;

    private const string Zsh = """
        _sweepstats() {
            local -a found
            found=("${(@f)$(sweepstats "[suggest:${CURSOR}]" "${BUFFER}" 2>/dev/null)}")
            compadd -- ${found:#} || _files
        }
        compdef _sweepstats sweepstats
        """;

    private const string Fish = """
        complete -c sweepstats -a '(sweepstats "[suggest:"(commandline -C)"]" (commandline -b) 2>/dev/null)'
        """;

    /// <summary>The command, which prints the script for bash, zsh or fish; it installs nothing.</summary>
    public static Command Create(Terminal terminal)
    {
        var shell = new Argument<string>("SHELL")
        {
            Description =
            "bash (eval \"$(sweepstats completion bash)\" in ~/.bashrc), zsh or fish",
            HelpName = "SHELL",
        };
        shell.AcceptOnly("bash", "zsh", "fish");
        var command = new Command("completion", "Print what makes a shell complete commands and options");
        command.Arguments.Add(shell);
        command.SetAction(
            words => terminal.Out.WriteLine(words.GetValue(shell) switch { "zsh" => Zsh, "fish" => Fish, _ => Bash }));
        return command;
    }
}
