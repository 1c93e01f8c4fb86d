using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using SweepStats.Acceptance.Commands;
using SweepStats.Files.Results;
using SweepStats.Files.Summaries;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>summary.json is what its types say: they follow the schema, and read it back without losing a byte.</summary>
public sealed class SummaryTypes
{
    private static readonly string Demo = Path.Combine(Repository.Root, "reports/receiver-cabin-curtain/summary.json");

    private static readonly JsonSchemaExporterOptions Whole =
        new() { TreatNullObliviousAsNonNullable = true, TransformSchemaNode = WithWhatIsRequired };

    // Names, which of them every summary has, kinds of values, and which of them may be null. The plan follows the table of
    // settings.
    [Fact]
    public void TheSchemaSaysWhatTheTypesSay()
    {
        JsonNode types = SummaryNames.Default.ResultSummary.GetJsonSchemaAsNode(Whole);
        IReadOnlyList<string> typed = SchemaShape.Lines(types, "plan"),
            stated = SchemaShape.Lines(JsonNode.Parse(SummaryJson.Schema())!, "plan");
        Assert.InRange(typed.Count, 150, 400);
        Assert.True(typed.SequenceEqual(stated), string.Join('\n',
            typed.Except(stated).Select(line => $"types{line}").Concat(stated.Except(typed).Select(line => $"schema{line}"))));
    }

    [Fact]
    public void WhatIsReadBackIsWrittenAlike()
    {
        ResultSummary? read = SummaryReader.Read(Demo).Summary;
        Assert.Equal(File.ReadAllText(Demo), JsonSerializer.Serialize(read, SummaryNames.Printed.ResultSummary) + "\n");
    }

    // Members that are there only where something is stated come back as well.
    [Fact]
    public void SoIsWhatIsThereOnlyWhereItIsStated()
    {
        using var scratch = new ScratchFolder();
        string campaign = Path.Combine(scratch.Path, "c"), report = Path.Combine(scratch.Path, "r");
        Assert.Equal(0, Shell.Run(
            "rehearse", campaign, "--points", "21", "--wear", "0.2", "--specimens", "3", "--requirement", "36").Code);
        File.AppendAllText(Path.Combine(campaign, "campaign.toml"), "\n[field]\nthreat_v_per_m = 50e3\n");
        Assert.Equal(0, Shell.Run("run", campaign, "--out", report, "--charts", "none").Code);
        ResultSummary read = SummaryReader.Read(report).Summary!;
        Assert.NotNull(read.Trend?.Requirement);
        Assert.All(read.Specimens, specimen => Assert.NotNull(specimen.Field));
        Assert.Equal(File.ReadAllText(Path.Combine(report, SummaryJson.FileName)),
            JsonSerializer.Serialize(read, SummaryNames.Printed.ResultSummary) + "\n");
    }

    // What gathers before it goes to the file is small beside the file.
    [Fact]
    public void ItIsWrittenAPieceAtATime()
    {
        var pieces = new PieceLengths();
        ResultSummary read = SummaryReader.Read(Demo).Summary!;
        JsonSerializer.Serialize(pieces, read with { Specimens = [.. Enumerable.Repeat(read.Specimens, 200).SelectMany(s => s)] },
            SummaryNames.Printed.ResultSummary);
        Assert.InRange(pieces.Total, 1_000_000, long.MaxValue);
        Assert.InRange(pieces.Longest, 1, 100_000);
    }

    // The exporter forgets what of a structure is required where the structure may be null.
    private static JsonNode WithWhatIsRequired(JsonSchemaExporterContext at, JsonNode schema)
    {
        if (Nullable.GetUnderlyingType(at.TypeInfo.Type) is { } inner && schema["properties"] is not null)
        {
            schema["required"] = at.TypeInfo.Options.GetTypeInfo(inner).GetJsonSchemaAsNode(Whole)["required"]?.DeepClone();
        }

        return schema;
    }

    private sealed class PieceLengths : MemoryStream
    {
        public long Total { get; private set; }

        public int Longest { get; private set; }

        public override void Write(ReadOnlySpan<byte> buffer) => (Total, Longest) =
            (Total + buffer.Length, Math.Max(Longest, buffer.Length));

        public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));
    }
}
