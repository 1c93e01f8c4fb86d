namespace SweepStats.Statistics;

/// <summary>A value that lies farther from the rest of its group than normal scatter allows.</summary>
/// <param name="Group">Which group.</param>
/// <param name="Place">Its place in the group.</param>
/// <param name="T">
/// Its distance from the mean of the others of its group against the scatter of all other values: Student's t.
/// </param>
/// <param name="DegreesOfFreedom">Degrees of freedom of that scatter.</param>
/// <param name="Probability">
/// Probability of any value as far out without outliers, by the sum over the values left, at most 1.
/// </param>
internal readonly record struct GroupedOutlier(int Group, int Place, double T, int DegreesOfFreedom, double Probability);

/// <summary>
/// Which values of several groups, up to a number set beforehand, lie farther out than one common normal scatter allows.
/// </summary>
/// <remarks>
/// The generalised extreme studentised deviate for groups that each have a mean of their own: the value with the largest
/// externally studentised residual t = e/(s₋·√(1 − 1/nⱼ)) is taken out k times, s₋ the scatter within groups without it on
/// N − groups − 1 degrees of freedom. The outliers are those up to the last whose probability is below the level, so that
/// outliers which hide each other are still counted. One group gives <see cref="GeneralisedEsd"/>. Assumes one scatter in all
/// groups: a group that scatters more than the rest is taken for full of outliers. Source: Rosner 1983, Technometrics 25, 165;
/// residuals as in Cook and Weisberg 1982 (from memory). Error: relative 1e-10 (fixtures/oracles/outliers.R).
/// </remarks>
internal static class GroupedOutliers
{
    /// <summary>Looks for outliers; the farthest first.</summary>
    /// <param name="groups">The groups, each in any order; one of a single value takes no part.</param>
    /// <param name="most">Largest number looked for, at least 1.</param>
    /// <param name="level">Chance of any false alarm, for example 0.05.</param>
    /// <exception cref="ArgumentException">A value that is not finite.</exception>
    public static IReadOnlyList<GroupedOutlier> Of(IReadOnlyList<double[]> groups, int most, double level)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        FiniteValues.RequireLevel(level);
        var left = new Remaining(groups);
        List<GroupedOutlier> farthest = [];
        int outliers = 0;
        while (farthest.Count < most && left.Farthest() is { } next)
        {
            farthest.Add(next);
            left.Lose(next);
            outliers = next.Probability < level ? farthest.Count : outliers;
        }

        return farthest[..outliers];
    }

    /// <summary>What is left of all groups: what is asked of each of thousands after every loss stands side by side.</summary>
    private sealed class Remaining
    {
        private readonly Group[] _groups;
        private readonly double[] _squares;
        private readonly double[] _taken;
        private int _values;
        private int _judged;

        /// <summary>All values of all groups.</summary>
        public Remaining(IReadOnlyList<double[]> groups)
        {
            _groups = [.. groups.Select((values, number) => new Group(number, values))];
            _squares = [.. _groups.Select(g => g.Squares)];
            _taken = [.. _groups.Select(g => g.Taken)];
            Count(_groups, 1);
        }

        /// <summary>The value farthest out in its group; null where too few are left to judge one.</summary>
        public GroupedOutlier? Farthest()
        {
            int freedom = _values - _judged - 1;
            if (freedom < 1)
            {
                return null;
            }

            Group far = _groups[Array.IndexOf(_taken, _taken.Max())];
            double rest = SquaresWithout(far);
            double t = far.Taken == 0 ? 0 : Math.Sqrt(far.Taken / (rest / freedom));
            double beyond = double.IsFinite(t) ? StudentT.UpperTail(t, freedom) : 0;
            return new GroupedOutlier(far.Number, far.FarthestPlace, t, freedom, Math.Min(1, 2 * _values * beyond));
        }

        /// <summary>Takes a value out of its group.</summary>
        public void Lose(GroupedOutlier outlier)
        {
            Group before = _groups[outlier.Group], after = before.Without(outlier.Place);
            Count([before], -1);
            Count([after], 1);
            (_groups[outlier.Group], _squares[outlier.Group], _taken[outlier.Group]) = (after, after.Squares, after.Taken);
        }

        private void Count(ReadOnlySpan<Group> groups, int sign)
        {
            foreach (Group group in groups)
            {
                _values += sign * group.Deviations.Length;
                _judged += group.Deviations.Length > 0 ? sign : 0;
            }
        }

        // The squares are summed without the value, not subtracted: what is left may be far smaller.
        private double SquaresWithout(Group far)
        {
            double without = far.Without(far.FarthestPlace).Squares;
            var rest = new CompensatedSum();
            for (int g = 0; g < _squares.Length; g++)
            {
                rest.Add(g == far.Number ? without : _squares[g]);
            }

            return rest.Value;
        }
    }

    /// <summary>What is left of a group, worked out once: only the group that loses a value changes.</summary>
    private sealed class Group
    {
        private readonly Placed[] _values;

        /// <summary>A whole group, its values in the order given and all finite.</summary>
        public Group(int number, double[] values)
            : this(number, [.. values.Select((value, place) => new Placed(place, value))])
        {
            FiniteValues.Require(values, 0, nameof(values));
        }

        private Group(int number, Placed[] values)
        {
            Number = number;
            _values = values;
            Deviations = values.Length < 2 ? [] : Statistics.Deviations.FromMean([.. values.Select(v => v.Value)]);
            Squares = Statistics.Deviations.Product(Deviations, Deviations);
            int at = Deviations.Length == 0 ? -1 : Enumerable.Range(0, Deviations.Length).MaxBy(i => Math.Abs(Deviations[i]));
            FarthestPlace = at < 0 ? -1 : values[at].Place;
            Taken = at < 0 ? -1 : Deviations[at] * Deviations[at] / (1 - (1.0 / Deviations.Length));
        }

        /// <summary>Place of the group among all.</summary>
        public int Number { get; }

        /// <summary>Distances from the mean of the group; none where one value is left.</summary>
        public double[] Deviations { get; }

        /// <summary>Sum of the squared distances from the mean of the group.</summary>
        public double Squares { get; }

        /// <summary>Place of the value farthest from the mean.</summary>
        public int FarthestPlace { get; }

        /// <summary>Squares that the scatter loses with it; −1 where no value can be judged.</summary>
        public double Taken { get; }

        /// <summary>The same group without the value at a place.</summary>
        public Group Without(int place) => new(Number, [.. _values.Where(v => v.Place != place)]);
    }

    /// <summary>A value and its place in the group as it was given.</summary>
    private readonly record struct Placed(int Place, double Value);
}
