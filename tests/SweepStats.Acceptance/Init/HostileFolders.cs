using SweepStats.Acceptance.Commands;
using SweepStats.Files.Campaigns;
using Xunit;

namespace SweepStats.Acceptance.Init;

/// <summary>Folders that nobody would wish for: init guesses less, says why, and what it writes can be read.</summary>
public sealed class HostileFolders : IDisposable
{
    private readonly BenchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void NamesOfEveryKindAreNamedSoThatTheyAreFound()
    {
        string[] names =
        [
            "a, \"b\" c/Noise,1.csv", "=noise.csv", "+noise.csv", "-noise.csv", "@noise.csv", " noise.csv", "#noise.csv",
            "\"noise\".csv", "noise;2.csv", "Noise [3] {x}.csv", "rauschen'4.csv", "Größenrauschen_noise_ü.csv", "NOISE.CSV",
            "noise\u00a05.csv", "noise 日本.csv",
        ];
        foreach (string name in names)
        {
            _folder.Sweep(name, -100);
        }

        _folder.Sweep("ref.csv", -40).Sweep("covered A.csv", -70).Sweep("covered B, \"d\".csv", -71);
        Assert.Equal(0, _folder.Init().Code);
        CampaignReading reading = CampaignFolder.Read(_folder.Path, new CampaignReadOptions(), null);
        Assert.Empty(reading.Faults);
        Assert.Equal(names.Length + 3, reading.Campaign!.Sweeps.Length);
        Assert.All(reading.Campaign.Sweeps,
            s => Assert.Equal(s.Name.Contains("ref.csv", StringComparison.Ordinal) ? "Reference"
                : s.Name.Contains("covered", StringComparison.Ordinal) ? "Covered" : "Floor", s.Role.ToString()));
    }

    [Fact]
    public void WhatCannotBeReadOrNamedIsListedAndLeftOut()
    {
        _folder.Sweep("noise.csv", -100).Sweep("ref.csv", -40).Sweep("covered A.csv", -70).Sweep("no\nise.csv", -100)
            .Sweep("back\\slash.csv", -100)
            .Text("empty.csv", "").Text("words.txt", "nothing here\n").Text("notes.md", "x").Text("pictures.png", "x");
        (int code, string output, _) = _folder.Init();
        Assert.Equal(0, code);
        string manifest = _folder.Read("sweeps.csv");
        foreach (string name in new[] { "no ise.csv", "back\\slash.csv", "empty.csv", "words.txt" })
        {
            Assert.Contains("# NOT READ " + name, manifest, StringComparison.Ordinal);
        }

        Assert.Contains("and 1 more reason", output, StringComparison.Ordinal);
        Assert.Contains("2 files of other kinds were not looked at", output, StringComparison.Ordinal);
        Assert.Equal(["covered A.csv,covered,,A", "noise.csv,floor", "ref.csv,reference"], _folder.Rows());
        Assert.Equal("", _folder.Check().Error);
    }

    [Fact]
    public void ManyFilesAreOneScreenAndEveryOneIsARow()
    {
        string[] kinds = ["noise", "ref", "A1", "B22", "Vlies_C3"];
        for (int i = 0; i < 500; i++)
        {
            _folder.Sweep(FormattableString.Invariant($"{kinds[i % 5]}_{i:000}.csv"),
                i % 5 == 0 ? -100 : i % 5 == 1 ? -40 : -70 - (i % 5));
        }

        (_, string output, _) = _folder.Init();
        Assert.StartsWith($"{_folder.Path}: 500 sweeps in 500 files: 100 floor, 100 reference, 300 covered.", output,
            StringComparison.Ordinal);
        Assert.InRange(output.ReplaceLineEndings("\n").Split('\n').Length, 3, 25);
        Assert.Equal(500, _folder.Rows().Length);
        Assert.Equal(100, _folder.Rows().Count(r => r.Contains(",covered,,B22", StringComparison.Ordinal)));
        Assert.Equal("", _folder.Check().Error);
    }

    // A level alone is no role: what shields well lies as low as the floor.
    [Theory]
    [InlineData("trace001.csv", -100, "it lies lowest, as a floor does, and as a specimen does that shields well")]
    [InlineData("trace001.csv", -40, "it lies highest, as a reference does")]
    [InlineData("trace001.csv", -70, "no word of its name tells")]
    [InlineData("noise 2.csv", -41, " dB, not below the reference (-4")]
    [InlineData("ref 2.csv", -99, " dB, not above the floor (-10")]
    [InlineData("ref_-10dB.csv", -50, " dB below another reference: a linearity sweep, or a covered one?")]
    [InlineData("covered B.csv", -30, "above the reference")]
    [InlineData("Referenzprobe A.csv", -70, "'Referenzprobe' in one name say different roles")]
    [InlineData("Blech 1.csv", -95, "'Blech' in one name say different roles")]
    [InlineData("ref sample A.csv", -40, "'ref', 'sample' in one name say different roles")]
    [InlineData("reference/noise.csv", -100, "'noise' says floor, and 'reference' in the folder's name says another role")]
    public void WhatNamesAndLevelsDoNotSettleIsLeftBlank(string file, double level, string why)
    {
        _folder.Sweep("noise 1.csv", -100).Sweep("ref 1.csv", -40).Sweep("covered A.csv", -70).Sweep(file, level);
        Assert.Equal(0, _folder.Init().Code);
        Assert.Contains(_folder.Rows(), r => r == file || r.StartsWith(file + ",,", StringComparison.Ordinal));
        Assert.Contains(why, _folder.Read("sweeps.csv"), StringComparison.Ordinal);
        Assert.Contains("the role is not filled in; use floor, reference, covered", _folder.Check().Error,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("covered_1.csv", "covered_2.csv", "the number 1 may count specimens or sweeps")]
    [InlineData("mit Probe 1.csv", "mit Probe 2.csv", "the number 1 may count specimens or sweeps")]
    [InlineData("cloth_blue1.csv", "cloth_blue2.csv", "the number in 'blue1' may count specimens or sweeps")]
    [InlineData("cloth_A_1.csv", "cloth_A_2.csv", "'1' behind 'A' may count specimens, placements or sweeps")]
    [InlineData("cloth_A1_1_2.csv", "cloth_A1_2_2.csv", "'1', '2' behind 'A1' may count specimens, placements or sweeps")]
    [InlineData("cloth_A1_s2.csv", "cloth_A1_s3.csv", "'s2' may be a specimen, a placement or a sweep")]
    [InlineData("sample1_wet.csv", "sample1_dry.csv", "'dry', 'wet' may be states of specimen 1")]
    [InlineData("cloth_A1_h.csv", "cloth_A1_v.csv", "'h' may be a polarisation")]
    [InlineData("Firma Nord/Tuch 1.csv", "Firma Nord/Tuch 2.csv",
        "the number 1 in 'Firma Nord' may count specimens of that lot, or sweeps of that specimen")]
    [InlineData("cloth/A/x1.csv", "cloth/A/x2.csv", "'x1' in 'A' may be a specimen of that lot, or a sweep of that specimen")]
    public void NumbersThatMayCountOneThingOrAnotherAreLeftToThePerson(string one, string other, string why)
    {
        _folder.Sweep("noise.csv", -100).Sweep("ref.csv", -40).Sweep(one, -70).Sweep(other, -71);
        _folder.Init();
        Assert.Contains($"{one},covered", _folder.Rows());
        Assert.Contains(why, _folder.Read("sweeps.csv"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("lot 3/sample B_1.csv", "covered,3,B")]
    [InlineData("Rolle2/Probe04.csv", "covered,2,04")]
    [InlineData("covered A1_r2.csv", "covered,,A1")]
    [InlineData("cloth_wdh1.csv", "covered,,1")]
    [InlineData("LotB_Sample7_Pos2_Rep1.csv", "covered,B,7,2")]
    [InlineData("blau/mit A1_2.csv", "covered,blau,A1")]
    [InlineData("Cloth X 30MHz-1GHz 10dBm.csv", "covered,,X")]
    [InlineData("left/sample3.csv", "covered,,3,left")]
    [InlineData("Sample 2/cov1.csv", "covered,,2")]
    public void PlacesAreReadFromWordsFoldersAndMarks(string file, string cells)
    {
        _folder.Sweep("noise.csv", -100).Sweep("ref.csv", -40).Sweep(file, -70);
        _folder.Init();
        Assert.Contains($"{file},{cells}", _folder.Rows());
        Assert.Equal("", _folder.Check().Error);
    }

    [Fact]
    public void SameNamesInDifferentFoldersAreTwoSpecimensOrTwoSweepsAsTheFoldersSay()
    {
        _folder.Sweep("noise.csv", -100).Sweep("ref.csv", -40)
            .Sweep("lot1/sample1.csv", -70).Sweep("lot2/sample1.csv", -72).Sweep("2026-03-05/sample9.csv", -75)
            .Sweep("2026-03-06/sample9.csv", -75);
        _folder.Init();
        Assert.Equal(
            ["2026-03-05/sample9.csv,covered,,9", "2026-03-06/sample9.csv,covered,,9", "lot1/sample1.csv,covered,1,1",
                "lot2/sample1.csv,covered,2,1", "noise.csv,floor", "ref.csv,reference"],
            _folder.Rows());
    }

    [Fact]
    public void WithoutAFloorTheRestIsProposedAndTheLackIsSaid()
    {
        _folder.Sweep("ohne.csv", -40).Sweep("mit.csv", -70);
        (_, string output, _) = _folder.Init();
        Assert.Contains("No floor sweep was found", output, StringComparison.Ordinal);
        Assert.Equal(["mit.csv,covered,,1", "ohne.csv,reference"], _folder.Rows());
        Assert.Contains("no-floor", _folder.Check().Out, StringComparison.Ordinal);
    }

    [Fact]
    public void NothingIsOverwrittenAndNothingIsMoved()
    {
        _folder.Sweep("ref.csv", -40).Text("sweeps.csv", "file,role\nref.csv,reference\n");
        string before = _folder.Read("ref.csv");
        (int code, _, string error) = _folder.Init();
        Assert.Equal(2, code);
        Assert.Contains("sweeps.csv' is already there", error, StringComparison.Ordinal);
        Assert.Equal(("file,role\nref.csv,reference\n", before), (_folder.Read("sweeps.csv"), _folder.Read("ref.csv")));
        Assert.False(File.Exists(Path.Combine(_folder.Path, "campaign.toml")));
    }

    [Fact]
    public void AFolderWithoutTracesIsANewCampaign()
    {
        _folder.Text("notes.docx", "x");
        Assert.Contains("is ready: fill in campaign.toml", _folder.Init().Out, StringComparison.Ordinal);
        Assert.True(Directory.Exists(Path.Combine(_folder.Path, "covered")));
    }

    [Fact]
    public void HighestAndMeanOfTheSameSweepsAreNotProposedAsRepeats()
    {
        _folder.Table("covered A.csv", "Frequency (Hz)", ("Max (dBm)", -60), ("Avg (dBm)", -70)).Sweep("noise.csv", -100)
            .Sweep("ref.csv", -40);
        _folder.Init();
        Assert.Equal(["noise.csv,floor", "ref.csv,reference"], _folder.Rows());
        Assert.Contains("# NOT READ covered A.csv: some columns show the same sweeps with other detectors",
            _folder.Read("sweeps.csv"), StringComparison.Ordinal);
        Assert.Contains("# level_columns = [\"\"]   # one or more of 2 'Max (dBm)', 3 'Avg (dBm)'", _folder.Read("campaign.toml"),
            StringComparison.Ordinal);
    }

    [Fact]
    public void TheSameFolderGivesTheSameFiles()
    {
        using var twin = new BenchFolder();
        foreach (BenchFolder folder in new[] { _folder, twin })
        {
            folder.Sweep("ref.csv", -40).Sweep("noise.csv", -100).Sweep("covered A.csv", -70);
            folder.Init();
        }

        Assert.Equal(_folder.Read("sweeps.csv"), twin.Read("sweeps.csv"));
        Assert.Equal(_folder.Read("campaign.toml"), twin.Read("campaign.toml"));
        Assert.Equal(Shell.Run("check", _folder.Path).Code, Shell.Run("check", twin.Path).Code);
    }
}
