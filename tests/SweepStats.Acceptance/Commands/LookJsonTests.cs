using System.Text.Json;
using Xunit;

namespace SweepStats.Acceptance.Commands;

public sealed class LookJsonTests
{
    [Fact]
    public void TheObjectHasTheKeysOfTheContractAndExactNumbers()
    {
        using LookFolder folder = new LookFolder().With("a.csv",
            "RBW,10 kHz\nAttenuation,10 dB\nSweep time,0.5 s\n\nfrequency_hz,level_dbm\n433920000.1,-0.1000000000000001\n"
                + "434000000,-71\n");
        JsonElement file = Assert.Single(folder.Json("a.csv").EnumerateArray());
        Assert.Equal(["file", "traces", "settings", "assumptions", "usable"], Keys(file));
        Assert.Equal(folder.Path("a.csv"), file.GetProperty("file").GetString());
        JsonElement trace = Assert.Single(file.GetProperty("traces").EnumerateArray());
        Assert.Equal(["name", "quantity", "unit", "points", "first", "last"], Keys(trace));
        Assert.Equal("dBm", trace.GetProperty("unit").GetString());
        Assert.Equal(2, trace.GetProperty("points").GetInt32());
        Assert.Equal(433920000.1, trace.GetProperty("first").GetProperty("frequency_hz").GetDouble());
        Assert.Equal(-0.1000000000000001, trace.GetProperty("first").GetProperty("level").GetDouble());
        Assert.Equal(-71, trace.GetProperty("last").GetProperty("level").GetDouble());
        JsonElement settings = file.GetProperty("settings");
        Assert.Equal(["rbw_hz", "attenuation_db", "sweep_time_s"], Keys(settings));
        Assert.Equal(10e3, settings.GetProperty("rbw_hz").GetDouble());
        Assert.Equal(0, file.GetProperty("assumptions").GetArrayLength());
    }

    [Fact]
    public void APhaseIsTrueWhereItWasReadAndElseLeftOut()
    {
        using LookFolder folder = new LookFolder().With("a.csv",
            "frequency_hz,S11 (dB),S21 (dB),S21 phase (deg)\n1000000,-3,-50,1\n2000000,-3.5,-51,2\n");
        JsonElement[] traces = [.. folder.Json("a.csv")[0].GetProperty("traces").EnumerateArray()];
        Assert.Equal(["name", "quantity", "unit", "points", "first", "last"], Keys(traces[0]));
        Assert.Equal(["name", "quantity", "unit", "points", "phase", "first", "last"], Keys(traces[1]));
        Assert.True(traces[1].GetProperty("phase").GetBoolean());
    }

    [Fact]
    public void AnUnstatedUnitIsNullAndTheDoubtSaysWhatToDo()
    {
        using LookFolder folder = new LookFolder().With("a.csv", "frequency_hz,\"on\"\"e\"\n1000000,-50\n2000000,-51\n");
        JsonElement trace = folder.Json("a.csv")[0].GetProperty("traces")[0];
        Assert.Equal("on\"e", trace.GetProperty("name").GetString());
        Assert.Equal(JsonValueKind.Null, trace.GetProperty("unit").ValueKind);
        JsonElement doubt = Assert.Single(trace.GetProperty("doubts").EnumerateArray());
        Assert.Equal(["line", "problem", "remedy"], Keys(doubt));
        Assert.Contains("unit of level", doubt.GetProperty("problem").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void ALevelThatIsNotFiniteIsNull()
    {
        using LookFolder folder =
            new LookFolder().With("a.s2p", "# Hz S RI R 50\n1000000 1 0 0 0 0 0 1 0\n2000000 1 0 0.1 0 0 0 1 0\n");
        JsonElement[] traces = [.. folder.Json("a.s2p")[0].GetProperty("traces").EnumerateArray()];
        JsonElement through = traces.Single(t => t.GetProperty("quantity").GetString() == "S21");
        Assert.Equal(JsonValueKind.Null, through.GetProperty("first").GetProperty("level").ValueKind);
        Assert.Equal(-20, through.GetProperty("last").GetProperty("level").GetDouble(), 12);
        Assert.Contains("exactly 0", traces.Single(t => t.GetProperty("quantity").GetString() == "S12").GetProperty("blank")
            .GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void ARefusedFileHasItsFirstFaultAndTheRestInMore()
    {
        using LookFolder folder = new LookFolder().With("bad.csv",
            "frequency_hz,level_dbm\n1000000,-50\n2000000,-50\n3000000,NaN\n4000000,-50\n5000000,inf\n6000000,-50\n")
            .With("good.csv", LookFolder.Ramp);
        (int code, string output, string error) =
            Shell.Run("look", "--format", "json", folder.Path("bad.csv"), folder.Path("good.csv"));
        Assert.Equal((2, ""), (code, error));
        JsonElement[] files = [.. JsonDocument.Parse(output).RootElement.EnumerateArray()];
        Assert.Equal(2, files.Length);
        Assert.Equal(["file", "error", "more"], Keys(files[0]));
        Assert.Equal(["line", "problem", "remedy"], Keys(files[0].GetProperty("error")));
        Assert.Equal(4, files[0].GetProperty("error").GetProperty("line").GetInt32());
        Assert.Equal(6, Assert.Single(files[0].GetProperty("more").EnumerateArray()).GetProperty("line").GetInt32());
        Assert.Equal(["file", "traces", "settings", "assumptions", "usable"], Keys(files[1]));
    }

    [Fact]
    public void AFileThatIsNotThereHasNoLine()
    {
        using var folder = new LookFolder();
        JsonElement file = folder.Json("none.csv")[0];
        Assert.Equal(["file", "error"], Keys(file));
        Assert.Equal(JsonValueKind.Null, file.GetProperty("error").GetProperty("line").ValueKind);
        Assert.Equal("there is no such file", file.GetProperty("error").GetProperty("problem").GetString());
    }

    private static string[] Keys(JsonElement element) => [.. element.EnumerateObject().Select(p => p.Name)];
}
