using System.Text;
using SweepStats.Cli;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
bool watched = !Console.IsErrorRedirected && !Console.IsOutputRedirected;
// A console without a known width says 0.
int? columns = watched && Console.WindowWidth > 0 ? Console.WindowWidth : null;
return CommandLine.Run(args, new Terminal(Console.Out, Console.Error, watched)
{
    Columns = columns,
    Coloured = watched && ConsoleColour.IsWanted(Environment.GetEnvironmentVariable) ? Console.Out : null,
});
