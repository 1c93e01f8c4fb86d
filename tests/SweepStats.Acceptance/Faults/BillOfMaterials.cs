using System.Text.Json;
using Xunit;

namespace SweepStats.Acceptance.Faults;

public sealed class BillOfMaterials
{
    /// <summary>
    /// reports/bill-of-materials.json names what the lock file holds; tests/supply/bill-of-materials.py makes it anew.
    /// </summary>
    [Fact]
    public void ItNamesEveryPackageOfTheProgram()
    {
        using JsonDocument lockFile = Read("src/SweepStats.Cli/packages.lock.json"),
            bill = Read("reports/bill-of-materials.json");
        IEnumerable<string> locked = lockFile.RootElement.GetProperty("dependencies").EnumerateObject()
            .SelectMany(framework => framework.Value.EnumerateObject())
            .Where(package => package.Value.GetProperty("type").GetString() != "Project")
            .Select(package => $"pkg:nuget/{package.Name}@{package.Value.GetProperty("resolved").GetString()}");
        IEnumerable<string> named = bill.RootElement.GetProperty("components").EnumerateArray()
            .Select(component => component.GetProperty("purl").GetString()!);
        Assert.Equal(locked.Distinct().Order(StringComparer.Ordinal), named.Order(StringComparer.Ordinal));
    }

    private static JsonDocument Read(string path) => JsonDocument.Parse(File.ReadAllText(Path.Combine(Repository.Root, path)));
}
