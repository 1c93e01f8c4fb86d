namespace SweepStats.Checks;

/// <summary>One doubt about a measurement. A check never alters a number.</summary>
public interface ICheck
{
    /// <summary>Name of the doubt, in kebab case; the code of its findings.</summary>
    string Code { get; }

    /// <summary>Looks at the evidence and says what it finds; nothing where all is well.</summary>
    IEnumerable<Finding> Inspect(Evidence seen);

    /// <summary>Why the evidence does not allow the check to be made, as half a sentence; null where it could be made.</summary>
    /// <remarks>Says what is missing, so that finding nothing is not taken for nothing being there.</remarks>
    string? UntestedBecause(Evidence seen) => null;

    /// <summary>What a check that could be made could not look at, and why, as half a sentence; null where it was all.</summary>
    string? LeftBecause(Evidence seen) => null;
}
