using Xunit;

namespace SweepStats.Browser;

/// <summary>A theory that needs a browser, and says so where there is none.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class BrowserTheoryAttribute : TheoryAttribute
{
    public BrowserTheoryAttribute() => Skip = Programs.Missing();
}
