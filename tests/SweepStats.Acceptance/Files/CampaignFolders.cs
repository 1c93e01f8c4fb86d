using System.Collections.Immutable;
using SweepStats.Files;
using SweepStats.Files.Campaigns;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Files;

public sealed class CampaignFolders : IDisposable
{
    private const string Plain = ScratchFolder.Traces.Plain;

    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void FoldersSayTheRoleLotSpecimenAndPlacement()
    {
        _folder.With("floor/f1.csv", Plain).With("Reference/r1.CSV", Plain).With("linearity/l.csv", Plain)
            .With("plate/p.csv", Plain)
            .With("covered/A1/c1.csv", Plain).With("covered/B/B1/c1.csv", Plain).With("covered/B/B2/p1/c1.csv", Plain)
            .With("covered/.hidden/x.csv", "no").With(".DS_Store", "no").With("README.txt", "notes")
            .With("floor/notes.md", "notes");
        CampaignReading reading = _folder.Read();
        Assert.Equal("", string.Join('\n', reading.Faults));
        ImmutableArray<Sweep> sweeps = reading.Campaign!.Sweeps;
        Assert.Equal(
            ["Reference/r1.CSV", "covered/A1/c1.csv", "covered/B/B1/c1.csv", "covered/B/B2/p1/c1.csv", "floor/f1.csv",
                "linearity/l.csv", "plate/p.csv"],
            sweeps.Select(s => s.Name));
        Assert.Equal(
            [(null, null, null), ("1", "A1", null), ("B", "B1", null), ("B", "B2", "p1"), (null, null, null), (null, null, null),
                (null, null, null)],
            sweeps.Select(s => (s.Lot, s.Specimen, s.Placement)));
        Assert.Equal([SweepRole.Reference, SweepRole.Covered, SweepRole.Covered, SweepRole.Covered, SweepRole.Floor,
            SweepRole.Linearity, SweepRole.Plate], sweeps.Select(s => s.Role));
        Assert.Contains("floor/notes.md was taken as notes and not read", reading.Assumptions);
        Assert.Contains("README.txt was taken as notes and not read", reading.Assumptions);
    }

    [Fact]
    public void SweepsAndInputsComeInNaturalOrder()
    {
        _folder.WithUsualSweeps().With("campaign.toml", "title = \"t\"\n");
        foreach (string name in new[] { "s10", "s2", "s1" })
        {
            _folder.With($"floor/{name}.csv", Plain);
        }

        CampaignReading reading = _folder.Read(threads: 4);
        Assert.Equal(["floor/s1.csv", "floor/s2.csv", "floor/s10.csv"],
            reading.Campaign!.Sweeps.Where(s => s.Role == SweepRole.Floor).Select(s => s.Name));
        Assert.Equal(["campaign.toml", "covered/A/A1/c1.csv", "floor/s1.csv", "floor/s2.csv", "floor/s10.csv",
            "reference/r1.csv"], reading.Inputs.Select(i => i.Path));
        // SHA-256 of the plain file's bytes, by the runtime's own hash of the text.
        string hash = Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(Plain)))
            .ToLowerInvariant();
        Assert.Equal(hash, reading.Inputs[1].Sha256);
    }

    [Fact]
    public void TheManifestSaysEverythingThatFoldersCannot()
    {
        _folder.With("all.csv", "frequency_hz,r_dbm,c_dbm\n1000,-1,-2\n2000,-1,-2\n").With("floor/unlisted.csv", Plain).With(
            "sweeps.csv",
            "role,file,lot,specimen,placement,column,taken_at,source_dbm,exclude\n# a "
                + "remark\nreference,all.csv,,,,r_dbm,2026-03-05T14:30:00+01:00,10,\ncovered,all.csv,\"autumn, "
                + "late\",A1,p1,3,,,door open\n");
        CampaignReading reading = _folder.Read();
        Assert.Equal("", string.Join('\n', reading.Faults));
        Sweep reference = reading.Campaign!.Sweeps[0];
        Sweep covered = reading.Campaign.Sweeps[1];
        Assert.Equal(("all.csv[r_dbm]", "all.csv[c_dbm]"), (reference.Name, covered.Name));
        Assert.Equal((new DateTimeOffset(2026, 3, 5, 13, 30, 0, TimeSpan.Zero), 10.0),
            (reference.TakenAt!.Value.ToUniversalTime(), reference.SourceDbm));
        Assert.Equal(("autumn, late", "A1", "p1", "door open"),
            (covered.Lot, covered.Specimen, covered.Placement, covered.ExcludedBecause));
        Assert.Equal(-2, covered.Levels[0]);
        Assert.Contains("floor/unlisted.csv is not listed in sweeps.csv and was not read", reading.Assumptions);
        Assert.Equal("floor/unlisted.csv", Assert.Single(reading.Unlisted));
    }

    [Fact]
    public void ColumnsOfOneFileAreSweepsOfTheirOwn()
    {
        _folder.WithUsualSweeps().With("floor/f.csv", "frequency_hz,a_dbm,b_dbm\n1000,-1,-2\n2000,-1,-2\n");
        Assert.Contains("floor/f.csv[b_dbm]", _folder.Read().Campaign!.Sweeps.Select(s => s.Name));
    }

    [Theory]
    [InlineData("file,role,lott\na.csv,floor,\n", 1, "'lott' is not a column (did you mean 'lot'?)", "placement")]
    [InlineData("file,lot\na.csv,1\n", 1, "the column 'role' is missing", "the header")]
    [InlineData("file,role,role\na.csv,floor,\n", 1, "'role' is there twice", "keep one")]
    [InlineData("file,role\nfloor/f.csv,flor\n", 2, "'flor' is not a role (did you mean 'floor'?)", "reference")]
    [InlineData("file,role\n../x.csv,floor\n", 2, "'../x.csv' leads out of the campaign", "into the campaign")]
    [InlineData("file,role\n/etc/passwd.csv,floor\n", 2, "leads out of the campaign", "into the campaign")]
    [InlineData("file,role\nfloor/f.xlsx,floor\n", 2, "the extension of 'floor/f.xlsx'", ".csv")]
    [InlineData("file,role\n,floor\n", 2, "the path of the file is empty", "relative to the campaign")]
    [InlineData("file,role\nreference/r1.csv,covered\n", 2, "a covered sweep needs its specimen", "'specimen'")]
    [InlineData("file,role,specimen\nreference/r1.csv,reference,A02\n", 2,
        "a reference sweep is of no specimen, and has 'A02'", "leave lot, specimen and placement empty")]
    [InlineData("file,role,lot\nfloor/f1.csv,floor,B\n", 2, "a floor sweep is of no specimen, and has 'B'",
        "or correct the role")]
    [InlineData("file,role,taken_at\nreference/r1.csv,reference,5.3.2026\n", 2, "'5.3.2026' is not a time", "ISO 8601")]
    [InlineData("file,role,source_dbm\nreference/r1.csv,reference,\"1,5\"\n", 2, "'1,5' is not a level", "decimal point")]
    [InlineData("file,role\nreference/r1.csv,reference\nreference/r1.csv,reference\n", 3, "listed twice", "remove one")]
    [InlineData("file,role\nreference/r1.csv,reference,x,y\n", 2, "the row has 4 fields and the header 2", "double quotes")]
    [InlineData("file,role\n\"reference/r1.csv,reference\n", 2, "a quoted field is not closed", "close the quotes")]
    [InlineData("file,role\n\"\n", 2, "a quoted field is not closed", "close the quotes")]
    public void ABadManifestIsRefusedForItsReason(string text, int line, string problem, string remedy)
    {
        CampaignReading reading = _folder.WithUsualSweeps().With("sweeps.csv", text).Read(keepGoing: true);
        Assert.Null(reading.Campaign);
        AssertFault(reading, "sweeps.csv", line, problem, remedy);
    }

    [Theory]
    [InlineData("covred/A/c.csv", "'covred' is not the name of a role (did you mean 'covered'?)")]
    [InlineData("loose.csv", "lies in no folder that says what it was taken for")]
    [InlineData("floor/deep/f.csv", "wrong depth")]
    [InlineData("covered/c.csv", "wrong depth")]
    [InlineData("covered/a/b/c/d/e.csv", "wrong depth")]
    [InlineData("floor/f.xlsx", "the extension is not that of a trace file")]
    [InlineData("Campaign.toml", "the name must be in small letters")]
    public void AMisplacedFileIsRefused(string file, string problem)
    {
        CampaignReading reading = _folder.WithUsualSweeps().With(file, Plain).Read();
        Assert.Null(reading.Campaign);
        AssertFault(reading, file, 0, problem, "");
    }

    [Fact]
    public void EveryBadFileIsListedInOneRun()
    {
        _folder.WithUsualSweeps().With("floor/a.csv", "x").With("floor/b.csv", "")
            .With("floor/c.csv", "frequency_hz,level_dbm\n2,1\n1,1\n").With("campaign.toml", "confidense = 0.9\n");
        CampaignReading reading = _folder.Read(threads: 3);
        Assert.Null(reading.Campaign);
        Assert.Equal(["campaign.toml", "floor/a.csv", "floor/b.csv", "floor/c.csv"], reading.Faults.Select(f => f.File));
    }

    [Fact]
    public void KeepingGoingLeavesBadFilesOutAndSaysSo()
    {
        CampaignReading reading = _folder.WithUsualSweeps().With("floor/a.csv", "x").Read(keepGoing: true);
        Assert.Equal(2, reading.Campaign!.Sweeps.Length);
        Assert.Empty(reading.Faults);
        Assert.StartsWith("floor/a.csv: no table", Assert.Single(reading.LeftOut), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("# nothing\n")]
    [InlineData("file,role\n")]
    [InlineData("file,role\n# floor/f01.csv,floor\n,\n")]
    public void AManifestWithoutRowsCountsAsNone(string text)
    {
        CampaignReading reading = _folder.WithUsualSweeps().With("sweeps.csv", text).Read();
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(2, reading.Campaign!.Sweeps.Length);
        Assert.Contains("sweeps.csv lists no sweeps; the folders' names were used", reading.Assumptions);
        Assert.Contains("sweeps.csv", reading.Inputs.Select(i => i.Path));
    }

    [Fact]
    public void AListedFileThatIsMissingIsNamedWithItsRow()
    {
        _folder.WithUsualSweeps().With("sweeps.csv",
            "file,role,specimen\nreference/r1.csv,reference,\nfloor/f9.csv,floor,\ncovered/A/A1/c1.csv,covered,A1\n");
        Assert.Equal("sweeps.csv:3: floor/f9.csv is not there; correct its path, put the file into the campaign, or "
            + "remove the row", Assert.Single(_folder.Read().Faults).ToString());
        CampaignReading going = _folder.Read(keepGoing: true);
        Assert.Equal(2, going.Campaign!.Sweeps.Length);
        Assert.StartsWith("sweeps.csv:3: floor/f9.csv is not there", Assert.Single(going.LeftOut), StringComparison.Ordinal);
    }

    [Fact]
    public void WhatIsNoTraceFileIsLeftOutWhenKeepingGoing()
    {
        CampaignReading reading = _folder.WithUsualSweeps().With("floor/photo.jpg", "x").Read(keepGoing: true);
        Assert.Equal(2, reading.Campaign!.Sweeps.Length);
        Assert.StartsWith("floor/photo.jpg: the extension is not that of a trace file", Assert.Single(reading.LeftOut),
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("floor/Thumbs.db")]
    [InlineData("covered/A/A1/desktop.ini")]
    [InlineData("covered/A/A1/Desktop.INI")]
    [InlineData("reference/._r1.csv")]
    [InlineData("floor/.DS_Store")]
    [InlineData("reference/~$r1.csv")]
    [InlineData("~$notes.docx")]
    [InlineData("Thumbs.db")]
    public void WhatSystemsLeaveBehindIsPassedOverInSilence(string file)
    {
        CampaignReading plain = _folder.WithUsualSweeps().Read();
        CampaignReading reading = _folder.With(file, "x").Read();
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(plain.Assumptions.AsEnumerable(), reading.Assumptions);
        Assert.Equal(plain.Inputs.AsEnumerable(), reading.Inputs);
    }

    [Fact]
    public void LooseSweepsBesidePlacementFoldersAreRefused()
    {
        _folder.WithUsualSweeps().With("covered/A/A1/p1/c.csv", Plain).With("covered/A/A1/p2/c.csv", Plain);
        ReadFault fault = Assert.Single(_folder.Read(keepGoing: true).Faults);
        Assert.Equal(
            "covered/A/A1: a sweep file lies loose beside 'p1' and 1 more folder and would silently count as one more "
                + "placement; name a placement there too, or move what lies loose", fault.ToString());
    }

    [Fact]
    public void AFolderCannotBeSpecimenAndLotAtOnce()
    {
        _folder.With("reference/r1.csv", Plain).With("covered/A1/c1.csv", Plain).With("covered/A1/c2.csv", Plain)
            .With("covered/A1/p1/c.csv", Plain);
        ReadFault fault = Assert.Single(_folder.Read().Faults);
        Assert.Equal(("covered/A1", "2 sweep files lie loose beside the folder 'p1', so the folder is a specimen and a "
            + "lot at once"), (fault.File, fault.Problem));
    }

    [Fact]
    public void WhatIsReadAndNotUsedIsSaid()
    {
        string[] sentences =
        [
            "declared_dbm stands in only for floor sweeps that show no noise: floor sweeps were taken",
            "impedance_ohm was not used: no level is a voltage",
            "linearity sweeps without source_dbm in sweeps.csv were not used: it takes the source levels to tell whether the "
                + "receiver follows them",
            "1 of 2 reference and covered sweeps have no time (taken_at): drift of repeats can then be looked for along their "
                + "order alone",
            "all reference and covered sweeps have the same time (taken_at): drift of repeats can then be looked for along "
                + "their order alone",
        ];
        Assert.Empty(_folder.WithUsualSweeps().Read().Assumptions.Intersect(sentences));
        _folder.With("campaign.toml", "[floor]\ndeclared_dbm = -104\n");
        Assert.Empty(_folder.Read().Assumptions.Intersect(sentences));
        _folder.With("campaign.toml", "[floor]\ndeclared_dbm = -104\n[setup]\nimpedance_ohm = 75\n").With("floor/f.csv", Plain)
            .With("linearity/l.csv", Plain);
        Assert.Equal(sentences[..3], _folder.Read().Assumptions.Intersect(sentences));
        _folder.With("sweeps.csv",
            "file,role,taken_at,exclude\nreference/r1.csv,reference,2026-03-05,\nfloor/f.csv,floor,,hum\n");
        Assert.Equal([sentences[1], sentences[4]], _folder.Read().Assumptions.Intersect(sentences));
        string Timed(string covered) => "file,role,lot,specimen,taken_at\nreference/r1.csv,reference,,,2026-03-05T09:00\n"
            + "covered/A/A1/c1.csv,covered,A,A1," + covered + "\n";
        _folder.With("sweeps.csv", Timed(string.Empty));
        Assert.Contains(sentences[3], _folder.Read().Assumptions);
        _folder.With("sweeps.csv", Timed("2026-03-05T09:00"));
        Assert.Contains(sentences[4], _folder.Read().Assumptions);
        _folder.With("sweeps.csv", Timed("2026-03-05T09:01"));
        Assert.Empty(_folder.Read().Assumptions.Intersect(sentences[3..]));
    }

    [Fact]
    public void ALinkThatLeadsOutIsRefusedAndOneWithinIsFollowed()
    {
        using var elsewhere = new ScratchFolder();
        elsewhere.With("f.csv", Plain);
        _folder.WithUsualSweeps().With("floor/f1.csv", Plain);
        File.CreateSymbolicLink(Path.Combine(_folder.Path, "floor/f2.csv"), Path.Combine(elsewhere.Path, "f.csv"));
        File.CreateSymbolicLink(Path.Combine(_folder.Path, "floor/f3.csv"), Path.Combine(_folder.Path, "floor/f1.csv"));
        ReadFault fault = Assert.Single(_folder.Read().Faults);
        Assert.Equal("floor/f2.csv: the file is a link that leads out of the campaign; put the file itself into the campaign",
            fault.ToString());
    }

    [Fact]
    public void AReportWithinTheCampaignIsNoPartOfIt()
    {
        CampaignReading reading = _folder.WithUsualSweeps().With("report/summary.json", "{\"program\": \"sweepstats\"}")
            .With("report/charts/a.svg", "x").With("report/bands.csv", "x").Read();
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Contains("report/ is an earlier report and was not read", reading.Assumptions);
    }

    [Fact]
    public void AMissingOrEmptyFolderIsAFault()
    {
        Assert.Contains("no such folder",
            Assert.Single(CampaignFolder.Read(_folder.Path + "x", new CampaignReadOptions(), null).Faults).Problem,
            StringComparison.Ordinal);
        Assert.Contains("holds no sweeps", Assert.Single(_folder.Read().Faults).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void AssumedImpedanceIsSaid()
    {
        const string Microvolts = "frequency_hz,Level (dBµV)\n1000,60\n2000,61\n";
        _folder.With("reference/r.csv", Microvolts).With("covered/A/A1/c.csv", Microvolts);
        Assert.Contains(_folder.Read().Assumptions, a => a.Contains("50 Ω", StringComparison.Ordinal));
        CampaignReading stated = _folder.With("campaign.toml", "[setup]\nimpedance_ohm = 75\n").Read();
        Assert.DoesNotContain(stated.Assumptions, a => a.Contains("50 Ω", StringComparison.Ordinal));
        Assert.Equal(60 - 90 - (10 * Math.Log10(75)), stated.Campaign!.Sweeps[0].Levels[0], 12);
    }

    [Fact]
    public void ThreadsAndProgressDoNotChangeTheReading()
    {
        for (int i = 0; i < 40; i++)
        {
            _folder.With($"floor/f{i}.csv", i % 7 == 0 ? "bad" : Plain);
        }

        _folder.WithUsualSweeps();
        CampaignReading one = _folder.Read(keepGoing: true, threads: 1);
        CampaignReading eight = _folder.Read(keepGoing: true, threads: 8);
        Assert.Equal(one.LeftOut.AsEnumerable(), eight.LeftOut.AsEnumerable());
        Assert.Equal(one.Inputs.AsEnumerable(), eight.Inputs.AsEnumerable());
        Assert.Equal(one.Campaign!.Sweeps.Select(s => s.Name), eight.Campaign!.Sweeps.Select(s => s.Name));
    }

    [Fact]
    public void EqualGridsAreShared()
    {
        CampaignReading reading = _folder.WithUsualSweeps().Read();
        Assert.Same(reading.Campaign!.Sweeps[0].Grid, reading.Campaign.Sweeps[1].Grid);
    }

    private static void AssertFault(CampaignReading reading, string file, int line, string problem, string remedy)
    {
        ReadFault? fault =
            reading.Faults.FirstOrDefault(f => f.File == file && f.Problem.Contains(problem, StringComparison.Ordinal));
        Assert.True(fault is not null, string.Join('\n', reading.Faults));
        Assert.Equal(line == 0 ? null : line, fault.Line);
        Assert.Contains(remedy, fault.Remedy, StringComparison.Ordinal);
    }
}
