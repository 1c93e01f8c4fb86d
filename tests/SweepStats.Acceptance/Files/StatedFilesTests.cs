using SweepStats.Files;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Results;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>What [[files]] in campaign.toml says of files, held against values worked by hand.</summary>
public sealed class StatedFilesTests : IDisposable
{
    private const string Bare = "1\t100\t-40\t0.5\n2\t200\t-41\t0.6\n3\t300\t-42\t0.9\n4\t400\t-43\t1.2\n";

    private readonly ScratchFolder _folder = new ScratchFolder().WithUsualSweeps();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void ColumnsAndUnitsOfAFileWithoutNamesAreWhatIsStated()
    {
        Sweep sweep =
            Floor(Bare, "frequency_column = \"2\"\nlevel_columns = [\"3\"]\nphase_column = \"4\"\nphase_unit = "
                + "\"rad\"\nfrequency_unit = \"MHz\"\nlevel_unit = \"dBm\"");
        Assert.Equal([1e8, 2e8, 3e8, 4e8], sweep.Grid.Hertz);
        Assert.Equal((-40, -43, 4), (sweep.Levels[0], sweep.Levels[3], sweep.Levels.Length));
        Assert.Equal(0.5 * 180 / Math.PI, sweep.Phases[0], 12);
    }

    [Fact]
    public void HeadersThatTellNothingNameColumnsOnceAPersonNamesThem()
    {
        Sweep sweep = Floor("A;B;C\n100;-40;0.5\n200;-41;0.1\n",
            "frequency_column = \"a\"\nlevel_column = \"C\"\nfrequency_unit = \"kHz\"\nlevel_unit = \"linear\"");
        Assert.Equal([1e5, 2e5], sweep.Grid.Hertz);
        Assert.Equal(20 * Math.Log10(0.5), sweep.Levels[0], 12);
        Assert.Equal(-20, sweep.Levels[1], 12);
    }

    [Fact]
    public void APairIsTheMagnitudeAndThePhaseOfTheNumberThatItStates()
    {
        Sweep sweep = Floor("F;X;Y\n1;3;4\n2;0;1\n",
            "frequency_column = \"F\"\nreal_column = \"X\"\nimaginary_column = \"Y\"\nfrequency_unit = \"GHz\"");
        Assert.Equal(20 * Math.Log10(5), sweep.Levels[0], 12);
        Assert.Equal(0, sweep.Levels[1], 12);
        Assert.Equal(90, sweep.Phases[1], 12);
    }

    [Fact]
    public void OneOfSeveralFrequenciesIsReadOnceItIsNamed() =>
        Assert.Equal(
            [1.001e8, 2.002e8],
            Floor("Freq nominal (MHz);Freq read (MHz);Level (dBm)\n100;100.1;-40\n200;200.2;-41\n",
                "frequency_column = \"2\"").Grid.Hertz);

    [Fact]
    public void TheFirstBlockThatMatchesHoldsAndOthersKeepTheirOwn()
    {
        _folder.With("floor/a.csv", Bare).With("floor/b.csv", Bare)
            .With("campaign.toml", Block("floor/a*", Units("3", "dBm")) + Block("**/*.CSV", Units("4", "dB")));
        CampaignReading reading = _folder.With("reference/r1.csv", Bare).With("covered/A/A1/c1.csv", Bare).Read();
        Assert.Empty(reading.Faults);
        Assert.Equal([(-40.0, "floor/a.csv"), (0.5, "floor/b.csv"), (0.5, "reference/r1.csv"), (0.5, "covered/A/A1/c1.csv")],
            reading.Campaign!.Sweeps.OrderBy(s => s.Role).Select(s => (s.Levels[0], s.Name)));
    }

    [Fact]
    public void ARowOfSweepsCsvGoesBeforeTheBlock()
    {
        _folder.With("floor/f.csv", Bare).With("campaign.toml", Block("floor/*", Units("3", "dBm")))
            .With("sweeps.csv", "file,role,lot,specimen,column\nfloor/f.csv,floor,,,4\nreference/r1.csv,reference,,,\n"
                + "covered/A/A1/c1.csv,covered,A,A1,\n");
        Assert.Equal(0.5, _folder.Read().Campaign!.Sweeps.Single(s => s.Role == SweepRole.Floor).Levels[0]);
    }

    [Theory]
    [InlineData("frequency_column = \"2\"",
        "floor/f.csv: campaign.toml states column 2 'Level (dBm)' as frequency_column, which the file gives in dBm")]
    [InlineData("level_columns = [\"2\"]\nlevel_unit = \"dB\"",
        "floor/f.csv: the file gives trace Level (dBm) in dBm, and campaign.toml says dB")]
    [InlineData("frequency_unit = \"kHz\"", "floor/f.csv: the file gives frequencies in MHz, and campaign.toml says kHz")]
    [InlineData("frequency_column = \"3\"", "floor/f.csv: campaign.toml states column 3 'X' as frequency_column, and the file "
        + "names 1 'Frequency (MHz)' as the frequency")]
    [InlineData("real_column = \"2\"\nimaginary_column = \"3\"",
        "floor/f.csv: campaign.toml states column 2 'Level (dBm)' as real_column, whose name says another quantity")]
    [InlineData("level_columns = [\"2\"]\nphase_column = \"3\"",
        "floor/f.csv: the file does not say the unit of the phase in column 3 'X'; say phase_unit")]
    [InlineData("frequency_column = \"X\"",
        "floor/f.csv: campaign.toml states column 3 'X' as frequency_column, and the file names")]
    [InlineData("level_columns = [\"9\"]", "floor/f.csv: there is no column '9' in floor/f.csv; it has 1 'Frequency (MHz)', 2 "
        + "'Level (dBm)', 3 'X'; correct level_columns under [[files]] in campaign.toml")]
    public void WhatTheFileSaysBeyondDoubtIsNotOverruled(string keys, string said) =>
        Assert.Contains(said, Fault("Frequency (MHz);Level (dBm);X\n100;-40;7\n200;-41;8\n", keys), StringComparison.Ordinal);

    [Fact]
    public void TheBlockOfTheTemplateIsReadOnceItsRemarksAreTakenAway()
    {
        using var fresh = new ScratchFolder();
        CampaignTemplate.Write(fresh.Path);
        string[] block = [.. File.ReadAllLines(Path.Combine(fresh.Path, "campaign.toml")).SkipWhile(l => l != "# [[files]]")
            .Select(l => l.TrimStart('#', ' '))];
        _folder.With("covered/A/A1/x.txt", "F;N;L;Phase (deg)\n100;1;-40;30\n200;2;-41;31\n")
            .With("campaign.toml", string.Join('\n', block));
        CampaignReading reading = _folder.Read();
        Assert.Empty(reading.Faults);
        Sweep sweep = reading.Campaign!.Sweeps.Single(s => s.Name.EndsWith("x.txt", StringComparison.Ordinal));
        Assert.Equal((1e8, -41, 31), (sweep.Grid.Hertz[0], sweep.Levels[1], sweep.Phases[1]));
    }

    [Theory]
    [InlineData("Nr.;Pegel (dBm)\n1;-40\n2;-41\n3;-42\n", "frequency_column = \"1\"\nfrequency_unit = \"MHz\"")]
    [InlineData("Time;Pegel (dBm)\n1;-40\n2;-41\n3;-42\n", "frequency_column = \"Time\"\nfrequency_unit = \"MHz\"")]
    public void ANumberOfTheRowIsNoFrequencyWhoeverNamesIt(string text, string keys) =>
        Assert.Contains("whose name says another quantity", Fault(text, keys), StringComparison.Ordinal);

    [Theory]
    [InlineData("[[files]]\nlevel_column = \"2\"", "campaign.toml:1: files.match is missing; add match")]
    [InlineData("[[files]]\nmatch = \"floor/*\"", "campaign.toml:1: the block [[files]] says nothing of its files")]
    [InlineData("[[files]]\nmatch = \"flor/*\"\nlevel_column = \"2\"",
        "campaign.toml:1: 'flor/*' matches no trace file of the campaign")]
    [InlineData("[[files]]\nmatch = \"../x/*\"\nlevel_column = \"2\"",
        "campaign.toml:2: the pattern '../x/*' leads out of the campaign")]
    [InlineData("[[files]]\nmatch = \"/etc/*\"\nlevel_column = \"2\"",
        "campaign.toml:2: the pattern '/etc/*' leads out of the campaign")]
    [InlineData("[[files]]\nmatch = \"floor/**\"\nlevel_column = \"2\"", "campaign.toml:2: the pattern 'floor/**' ends with **")]
    [InlineData("[[files]]\nmatch = \"floor/*\"\nlevel_colum = \"2\"",
        "campaign.toml:3: there is no key 'level_colum' in [files] (did you mean 'level_column'?)")]
    [InlineData("[[files]]\nmatch = \"floor/*\"\nlevel_column = \"2\"\nlevel_columns = [\"2\"]",
        "campaign.toml:3: level_column and level_columns are both stated")]
    [InlineData("[[files]]\nmatch = \"floor/*\"\nlevel_column = \"2\"\nreal_column = \"3\"\nimaginary_column = \"4\"",
        "campaign.toml:4: real_column and a column of levels are both stated")]
    [InlineData("[[files]]\nmatch = \"floor/*\"\nreal_column = \"3\"",
        "campaign.toml:3: real_column stands without imaginary_column")]
    [InlineData("[[files]]\nmatch = \"floor/*\"\nphase_column = \"3\"",
        "campaign.toml:3: phase_column does not tell whose phase it is")]
    [InlineData("[[files]]\nmatch = \"floor/*\"\nlevel_unit = \"dBX\"", "campaign.toml:3: files.level_unit is 'dBX'; use dBm")]
    [InlineData("[[files]]\nmatch = \"floor/*\"\nlevel_columns = [\"2\", \"2\"]",
        "campaign.toml:3: level_columns names '2' twice")]
    [InlineData("[[files]]\nmatch = \"floor/*\"\nlevel_columns = [\"\"]", "campaign.toml:3: level_columns holds an empty text")]
    [InlineData("[[files]]\nmatch = \"**/*\"\nlevel_unit = \"dBm\"\n[[files]]\nmatch = \"floor/*\"\nlevel_column = \"2\"",
        "campaign.toml:4: every file that 'floor/*' matches is matched by a block before, which holds")]
    [InlineData("[files]\nmatch = \"floor/*\"\nlevel_column = \"2\"",
        "campaign.toml:1: the heading of 'files' has the wrong brackets; write [[files]]")]
    public void BadBlocksAreRefusedWithTheirLine(string toml, string said)
    {
        _folder.With("floor/f.csv", ScratchFolder.Traces.Plain).With("campaign.toml", toml + "\n");
        Assert.Contains(_folder.Read().Faults, f => f.ToString().StartsWith(said, StringComparison.Ordinal));
    }

    [Fact]
    public void ATouchstoneFileHasNoColumnsToState()
    {
        _folder.With("floor/f.s2p", "# MHz S DB R 50\n100 0 0 -40 10 -40 10 0 0\n200 0 0 -41 20 -41 20 0 0\n")
            .With("campaign.toml", Block("**/*.s2p", "frequency_column = \"1\""));
        Assert.Contains("states frequency_column, and the layout of this file leaves no choice of it",
            Assert.Single(_folder.Read().Faults).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void APhaseColumnIsNotPassedOverWhereTablesStandBelowEachOther()
    {
        const string Table = "Frequency (MHz);Level (dBm);P\n100;-40;1\n200;-41;2\n300;-42;3\n";
        string said = Fault("Sweep 1\n" + Table + "\nSweep 2\n" + Table,
            "level_columns = [\"1\"]\nphase_column = \"3\"\nphase_unit = \"deg\"");
        Assert.Contains("campaign.toml states phase_column, and this file holds tables below each other", said,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("covered/**/*.txt", "covered/a.txt", true)]
    [InlineData("covered/**/*.txt", "Covered/x/y/A.TXT", true)]
    [InlineData("covered/**/*.txt", "floor/covered/a.txt", false)]
    [InlineData("covered/*.txt", "covered/x/a.txt", false)]
    [InlineData("**/b*a*.csv", "x/babca.csv", true)]
    [InlineData("**/b*a*.csv", "x/bcb.csv", false)]
    [InlineData("./floor/?.csv", "floor/a.csv", false)]
    [InlineData("./floor/[a].csv", "floor/[a].csv", true)]
    public void PatternsMatchAsTheyAreDocumented(string pattern, string file, bool matches)
    {
        _folder.With(file, ScratchFolder.Traces.Plain).With("campaign.toml", Block(pattern, "level_unit = \"dBm\""));
        Assert.Equal(matches,
            !_folder.Read().Faults.Any(f => f.Problem.Contains("matches no trace file", StringComparison.Ordinal)));
    }

    private static string Units(string column, string unit) =>
        $"frequency_column = \"2\"\nlevel_columns = [\"{column}\"]\nfrequency_unit = \"MHz\"\nlevel_unit = \"{unit}\"";

    private static string Block(string match, string keys) => $"[[files]]\nmatch = \"{match}\"\n{keys}\n";

    private Sweep Floor(string text, string keys)
    {
        CampaignReading reading = _folder.With("floor/f.csv", text).With("campaign.toml", Block("floor/*.csv", keys)).Read();
        Assert.Empty(reading.Faults);
        return reading.Campaign!.Sweeps.Single(s => s.Role == SweepRole.Floor);
    }

    private string Fault(string text, string keys)
    {
        ReadFault fault =
            Assert.Single(_folder.With("floor/f.csv", text).With("campaign.toml", Block("floor/*.csv", keys)).Read().Faults);
        return fault.ToString();
    }
}
