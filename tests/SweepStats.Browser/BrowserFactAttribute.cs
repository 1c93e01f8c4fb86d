using Xunit;

namespace SweepStats.Browser;

/// <summary>A fact that needs a browser and another program, and says so where one is missing.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class BrowserFactAttribute : FactAttribute
{
    /// <param name="program">The other program.</param>
    /// <param name="package">Where Debian has it from.</param>
    public BrowserFactAttribute(string program, string package) => Skip = Programs.Missing(program, package);
}
