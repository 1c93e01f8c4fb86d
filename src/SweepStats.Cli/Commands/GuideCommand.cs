using System.CommandLine;
using SweepStats.Cli.Guide;

namespace SweepStats.Cli.Commands;

/// <summary>sweepstats guide: the pages of the guide, for a bench without a network.</summary>
internal static class GuideCommand
{
    /// <summary>The command; without a topic it lists the pages.</summary>
    public static Command Create(Terminal terminal)
    {
        var topic = new Argument<string?>("TOPIC")
        {
            Description = "Which page; the list of them unless given",
            Arity = ArgumentArity.ZeroOrOne,
            HelpName = "TOPIC",
        };
        topic.AcceptOnly([.. GuideTopic.All.Select(page => page.Name)]);
        var command = new Command("guide", "Print a page of the guide: campaigns, numbers, files, lots and more");
        command.Arguments.Add(topic);
        command.SetAction(words => terminal.Write(words.GetValue(topic) is { } name ? Page(name) : List()));
        return command;
    }

    private static IEnumerable<string> Page(string name)
    {
        GuideTopic page = GuideTopic.All.Single(topic => topic.Name == name);
        return [page.Title, .. page.Lines];
    }

    private static IEnumerable<string> List() =>
        GuideTopic.All.Select(topic => $"sweepstats guide {topic.Name,-10} {topic.Title}");
}
