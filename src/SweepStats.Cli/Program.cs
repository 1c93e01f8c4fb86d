using System.Text;
using SweepStats.Cli;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
return CommandLine.Run(args, new Terminal(Console.Out, Console.Error, Interactive: !Console.IsErrorRedirected && !Console.IsOutputRedirected));
