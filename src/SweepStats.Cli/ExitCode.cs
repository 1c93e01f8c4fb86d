namespace SweepStats.Cli;

/// <summary>What the program tells the shell.</summary>
internal static class ExitCode
{
    public const int Done = 0;
    public const int Gated = 1;
    public const int BadInput = 2;
    public const int InternalError = 3;
}
