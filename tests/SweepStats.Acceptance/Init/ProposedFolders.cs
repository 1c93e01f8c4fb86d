using Xunit;

namespace SweepStats.Acceptance.Init;

/// <summary>
/// Five folders as people keep them: what init proposes, what a person has to change, and that the next command then runs.
/// </summary>
public sealed class ProposedFolders : IDisposable
{
    private const double Floor = -100;
    private const double Reference = -40;

    private readonly BenchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void FlatWithNames()
    {
        for (int i = 1; i <= 3; i++)
        {
            _folder.Sweep($"noise{i}.csv", Floor).Sweep($"ref{i}.csv", Reference)
                .Sweep($"cloth_A1_{i}.csv", -70).Sweep($"cloth_A2_{i}.csv", -68).Sweep($"B7-p{i}.csv", -80);
        }

        Proposes(
            "B7-p1.csv,covered,,B7,p1", "B7-p2.csv,covered,,B7,p2", "B7-p3.csv,covered,,B7,p3",
            "cloth_A1_1.csv,covered,,A1", "cloth_A1_2.csv,covered,,A1", "cloth_A1_3.csv,covered,,A1",
            "cloth_A2_1.csv,covered,,A2", "cloth_A2_2.csv,covered,,A2", "cloth_A2_3.csv,covered,,A2",
            "noise1.csv,floor", "noise2.csv,floor", "noise3.csv,floor", "ref1.csv,reference", "ref2.csv,reference",
            "ref3.csv,reference");
        RunsAfter(0, row => row);
    }

    [Fact]
    public void DatedFoldersAndTimesInNames()
    {
        foreach (string day in new[] { "2026-03-05", "2026-03-06" })
        {
            _folder.Sweep($"{day}/floor_0900.csv", Floor).Sweep($"{day}/open.csv", Reference)
                .Sweep($"{day}/sample1_p1.csv", -70).Sweep($"{day}/sample2_p1.csv", -72);
        }

        _folder.Sweep("thru 20260307_101500.csv", Reference).Sweep("sample 3, 07.03.2026 10.20.csv", -75);
        Proposes(
            "2026-03-05/floor_0900.csv,floor", "2026-03-05/open.csv,reference",
            "2026-03-05/sample1_p1.csv,covered,,1,p1 2026-03-05", "2026-03-05/sample2_p1.csv,covered,,2,p1 2026-03-05",
            "2026-03-06/floor_0900.csv,floor", "2026-03-06/open.csv,reference",
            "2026-03-06/sample1_p1.csv,covered,,1,p1 2026-03-06", "2026-03-06/sample2_p1.csv,covered,,2,p1 2026-03-06",
            "\"sample 3, 07.03.2026 10.20.csv\",covered,,3,,,2026-03-07T10:20:00",
            "thru 20260307_101500.csv,reference,,,,,2026-03-07T10:15:00");
        Assert.Contains("the name says the day alone (2026-03-05); add the time of day", _folder.Read("sweeps.csv"),
            StringComparison.Ordinal);
        RunsAfter(0, row => row);
    }

    // Two numbers, one of them behind a word for sweeps: the other is of the specimen. All sweeps of one would hide that it has
    // three.
    [Theory]
    [InlineData("curtain {0} run {1}.csv", "{0}")]
    [InlineData("Vorhang_{0}_Messung_{1}.csv", "{0}")]
    [InlineData("curtain no {0} sweep {1}.csv", "{0}")]
    [InlineData("run {1} curtain {0}.csv", "{0}")]
    [InlineData("mesh {0} run {1}.csv", "mesh_{0}")]
    public void ANumberBesideThatOfTheSweepTellsTheSpecimen(string name, string specimen)
    {
        _folder.Sweep("noise1.csv", Floor).Sweep("ref1.csv", Reference);
        List<string> rows = ["noise1.csv,floor", "ref1.csv,reference"];
        for (int n = 1; n <= 3; n++)
        {
            for (int m = 1; m <= 2; m++)
            {
                string file = string.Format(System.Globalization.CultureInfo.InvariantCulture, name, n, m);
                _folder.Sweep(file, -70 - n);
                rows.Add($"{file},covered,,{string.Format(System.Globalization.CultureInfo.InvariantCulture, specimen, n)}");
            }
        }

        Proposes([.. rows.Order(StringComparer.Ordinal)]);
    }

    // Of "mit Stoff 1" the number may count cloths or sweeps: a person says it once a row.
    [Fact]
    public void RolesInTheFileNamesInGermanAndEnglish()
    {
        foreach (string number in new[] { "1", "2" })
        {
            _folder.Sweep($"Grundrauschen {number}.txt", Floor).Sweep($"ohne Probe {number}.TXT", Reference)
                .Sweep($"mit Stoff {number}.txt", -70).Sweep($"Muster 7 Lage {number}.txt", -75);
        }

        _folder.Sweep("Source off.txt", Floor).Sweep("without cloth.txt", Reference).Sweep("Charge 4 Prüfling B.txt", -66)
            .Sweep("Uncovered.txt", Reference);
        Proposes(
            "Charge 4 Prüfling B.txt,covered,4,B", "Grundrauschen 1.txt,floor", "Grundrauschen 2.txt,floor",
            "Muster 7 Lage 1.txt,covered,,7,1", "Muster 7 Lage 2.txt,covered,,7,2", "Source off.txt,floor",
            "Uncovered.txt,reference", "mit Stoff 1.txt,covered", "mit Stoff 2.txt,covered", "ohne Probe 1.TXT,reference",
            "ohne Probe 2.TXT,reference", "without cloth.txt,reference");
        Assert.Contains("sweeps.csv:19: a covered sweep needs its specimen; fill in the column 'specimen'", _folder.Check().Error,
            StringComparison.Ordinal);
        RunsAfter(2, row => row.StartsWith("mit Stoff", StringComparison.Ordinal)
            ? row.Replace("covered,,,", "covered,,stoff,", StringComparison.Ordinal) : row);
    }

    [Fact]
    public void OneFileWithAllTraces()
    {
        _folder.Table(
            "all sweeps.csv", "Frequency (Hz)", ("Noise 1 (dBm)", Floor), ("Noise 2 (dBm)", Floor), ("Ref 1 (dBm)", Reference),
            ("Ref 2 (dBm)", Reference), ("A1 p1 (dBm)", -70), ("A1 p2 (dBm)", -71), ("Sample A2 left (dBm)", -60),
            ("Sample A2 right (dBm)", -61));
        Proposes(
            "all sweeps.csv,floor,,,,Noise 1 (dBm)", "all sweeps.csv,floor,,,,Noise 2 (dBm)",
            "all sweeps.csv,reference,,,,Ref 1 (dBm)", "all sweeps.csv,reference,,,,Ref 2 (dBm)",
            "all sweeps.csv,covered,,A1,p1,A1 p1 (dBm)", "all sweeps.csv,covered,,A1,p2,A1 p2 (dBm)",
            "all sweeps.csv,covered,,A2,left,Sample A2 left (dBm)", "all sweeps.csv,covered,,A2,right,Sample A2 right (dBm)");
        RunsAfter(0, row => row);
    }

    [Fact]
    public void TouchstoneOnlyWithFoldersOfSpecimens()
    {
        for (int i = 1; i <= 2; i++)
        {
            _folder.TwoPort($"VNA noise {i}.s2p", -110).TwoPort($"thru_{i}.S2P", -1).TwoPort($"Tuch A1/mess{i}.s2p", -40)
                .TwoPort($"Tuch B2/mess{i}.s2p", -45);
        }

        Proposes(
            "Tuch A1/mess1.s2p,covered,,A1", "Tuch A1/mess2.s2p,covered,,A1", "Tuch B2/mess1.s2p,covered,,B2",
            "Tuch B2/mess2.s2p,covered,,B2", "VNA noise 1.s2p,floor", "VNA noise 2.s2p,floor", "thru_1.S2P,reference",
            "thru_2.S2P,reference");
        RunsAfter(0, row => row);
    }

    [Fact]
    public void FoldersOfACampaignAreReadAsACampaignReadsThem()
    {
        _folder.Sweep("floor/a.csv", Floor).Sweep("reference/a.csv", Reference).Sweep("linearity/a.csv", Reference - 10)
            .Sweep("plate/a.csv", Floor + 5)
            .Sweep("covered/x/a.csv", -70).Sweep("covered/autumn/A1/left.csv", -71).Sweep("covered/autumn/A1/p2/b.csv", -72);
        Proposes(
            "covered/autumn/A1/left.csv,covered,autumn,A1", "covered/autumn/A1/p2/b.csv,covered,autumn,A1,p2",
            "covered/x/a.csv,covered,,x", "floor/a.csv,floor", "linearity/a.csv,linearity", "plate/a.csv,plate",
            "reference/a.csv,reference");
        RunsAfter(0, row => row);
    }

    [Fact]
    public void WhatTheFileStatesOfItsTimeGoesBeforeItsName()
    {
        _folder.Sweep("noise 2026-03-01_0800.csv", Floor, above: "Date;2026-03-05 14:30:10\n")
            .Sweep("ref 2026-03-05.csv", Reference).Sweep("sample1 2026-03-06.csv", -70);
        Proposes(
            "noise 2026-03-01_0800.csv,floor,,,,,2026-03-05T14:30:10", "ref 2026-03-05.csv,reference",
            "sample1 2026-03-06.csv,covered,,1");
    }

    [Fact]
    public void UnitsThatNoFileStatesAreAskedForInCampaignToml()
    {
        const string Head = "Frequency;Level";
        _folder.Sweep("floor.csv", Floor, Head).Sweep("ref.csv", Reference, Head).Sweep("covered_A.csv", -70, Head);
        Proposes("covered_A.csv,covered,,A", "floor.csv,floor", "ref.csv,reference");
        Assert.Equal(2, _folder.Check().Code);
        Assert.Equal(2,
            _folder.Edit("campaign.toml", l => l.StartsWith("# frequency_unit = \"MHz\"    #", StringComparison.Ordinal)
                || l.StartsWith("# level_unit = \"dBm\"        #", StringComparison.Ordinal) ? l[2..] : l));
        RunsAfter(0, row => row);
    }

    [Fact]
    public void ColumnsThatNobodyNamedAreAskedForInCampaignToml()
    {
        _folder.Sweep("ref.csv", Reference).Sweep("floor.csv", Floor);
        string rows = string.Concat(Enumerable.Range(0, 9)
            .Select(i => FormattableString.Invariant($"{30 + (10 * i)}\t{-70 - (i % 3)}\t{20 + i}.5\n")));
        _folder.Text("raw/covered_A.txt", rows);
        Proposes("floor.csv,floor", "ref.csv,reference");
        string toml = _folder.Read("campaign.toml");
        Assert.Contains("# match = \"raw/*.txt\"\n# level_columns = [\"\"]   # one or more of 2, 3\n# frequency_unit = \"\"   # "
            + "Hz, kHz, MHz or GHz\n# level_unit = \"\"", toml, StringComparison.Ordinal);
        string filled = toml[..toml.IndexOf("## FILL IN", StringComparison.Ordinal)]
            + "[[files]]\nmatch = \"raw/*.txt\"\nlevel_columns = [\"2\"]\nfrequency_unit = \"MHz\"\nlevel_unit = \"dBm\"\n";
        _folder.Text("campaign.toml", filled);
        RunsAfter(1, row => row.StartsWith("# raw/covered_A.txt,covered,,A", StringComparison.Ordinal) ? row[2..] : row);
        Assert.DoesNotContain("not listed", _folder.Check().Out, StringComparison.Ordinal);
    }

    [Fact]
    public void ColumnsWithoutUnitAreSweepsOnceTheirNamesTellRoles()
    {
        _folder.Table("day.csv", "Frequency (Hz)", ("Noise", Floor), ("Open", Reference), ("Cloth A", -70), ("Cloth B", -75));
        Proposes("day.csv,floor,,,,Noise", "day.csv,reference,,,,Open", "day.csv,covered,,A,,Cloth A",
            "day.csv,covered,,B,,Cloth B");
        _folder.Edit("campaign.toml",
            l => l.StartsWith("# level_unit = \"dBm\"        #", StringComparison.Ordinal) ? l[2..] : l);
        RunsAfter(0, row => row);
    }

    private void Proposes(params string[] rows)
    {
        (int code, string output, string error) = _folder.Init();
        Assert.Equal((0, ""), (code, error));
        Assert.Equal(rows, _folder.Rows());
        Assert.InRange(output.ReplaceLineEndings("\n").Split('\n').Length, 3, 25);
    }

    private void RunsAfter(int changes, Func<string, string> edit)
    {
        Assert.Equal(changes, _folder.Edit(edit));
        (int code, string output, string error) = _folder.Check();
        Assert.Equal("", error);
        Assert.InRange(code, 0, 1);
        Assert.Contains("This measurement", output, StringComparison.Ordinal);
    }
}
