using System.CommandLine;
using SweepStats.Rehearsal;

namespace SweepStats.Cli.Commands;

/// <summary>Options of sweepstats rehearse, each with the part of the plan that it sets.</summary>
internal sealed class RehearseSettings
{
    private readonly List<Func<RehearsalPlan, ParseResult, RehearsalPlan>> _settings = [];

    /// <summary>Has an option set its part of the plan, with the option's own default where it is not given.</summary>
    public void Set<T>(Option<T> option, Func<RehearsalPlan, T, RehearsalPlan> set) =>
        _settings.Add((plan, words) => set(plan, words.GetValue(option)!));

    /// <summary>The plan of defaults, as the words change it.</summary>
    public RehearsalPlan Plan(ParseResult words) => _settings.Aggregate(new RehearsalPlan(), (plan, set) => set(plan, words));
}
