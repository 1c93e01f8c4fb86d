using System.Diagnostics;

namespace SweepStats.Acceptance.BadInput;

/// <summary>Files of strange kinds and sizes, manifests, settings and folders that must be refused.</summary>
internal static class BadCampaigns
{
    public static IEnumerable<BadInput> All => [.. Files, .. Manifests, .. Settings, .. Folders];

    private static IEnumerable<BadInput> Files =>
    [
        new("a spreadsheet renamed",
            c => c.With("floor/f.csv", [0x50, 0x4B, 0x03, 0x04, 0x14, 0x00, 0x06, 0x00, .. Noise(3000)])),
        new("a line of more than a mebibyte",
            c => c.With("floor/f.csv", "frequency_hz,level_dbm\n1000,-50\n2000," + new string('9', 1 << 20) + "\n")),
        new("a line of a gigabyte", c => c.WithStream("floor/f.csv", s => s.SetLength((1L << 30) + 1))),
        new("ten million rows", c => c.WithStream("floor/f.csv", TenMillionRows)),
        new("a hundred thousand columns",
            c => c.With("floor/f.csv", string.Join(',', Enumerable.Repeat("1", 100_000)) + "\n"
                + string.Join(',', Enumerable.Repeat("2", 100_000)) + "\n")),
        new("a link that leads out of the campaign",
            c => c.With("../outside.csv", "1,2\n3,4\n").WithLink("floor/f.csv", Path.Combine(c.Root, "outside.csv"))),
        new("a link to a device", c => c.WithLink("floor/f.csv", "/dev/zero")),
        new("a link to nothing", c => c.WithLink("floor/f.csv", "nowhere.csv")),
        new("a named pipe", c => Process.Start("mkfifo", Path.Combine(c.Folder, "floor/f.csv"))!.WaitForExit()),
        new("a file of another kind among the sweeps", c => c.With("floor/f.xlsx", "x")),
    ];

    private static IEnumerable<BadInput> Manifests =>
    [
        BadInput.Manifest("a path that leaves the campaign", "file,role\n../x.csv,floor\n"),
        BadInput.Manifest("a path from the root", "file,role\n/etc/passwd.csv,floor\n"),
        BadInput.Manifest("a file that is not there", "file,role\nreference/r1.csv,reference\nfloor/f9.csv,floor\n"),
        BadInput.Manifest("a strange role", "file,role\nreference/r1.csv,refrence\n"),
        BadInput.Manifest("a role that was not filled in", "file,role\nreference/r1.csv,\n"),
        BadInput.Manifest("a strange column", "file,role,spezimen\nreference/r1.csv,reference,\n"),
        BadInput.Manifest("a column without which nothing can be said", "file,lot\nreference/r1.csv,1\n"),
        BadInput.Manifest("a sweep listed twice", "file,role\nreference/r1.csv,reference\nreference/r1.csv,reference\n"),
        BadInput.Manifest("a covered sweep of no specimen", "file,role\ncovered/A/A1/c1.csv,covered\n"),
        BadInput.Manifest("a reference of one specimen", "file,role,specimen\nreference/r1.csv,reference,A02\n"),
        BadInput.Manifest("a date in no standard style", "file,role,taken_at\nreference/r1.csv,reference,5.3.2026\n"),
        BadInput.Manifest("a trace that the file does not have", "file,role,column\nreference/r1.csv,reference,Trace 9\n"),
        BadInput.Manifest("a quote that is not closed in sweeps.csv", "file,role\n\"reference/r1.csv,reference\n"),
    ];

    private static IEnumerable<BadInput> Settings =>
    [
        BadInput.Settings("settings that are not TOML", "title = \n"),
        BadInput.Settings("a mistyped key", "confidense = 0.9\n"),
        BadInput.Settings("a mistyped section", "[setupp]\nrbw_hz = 1e3\n"),
        BadInput.Settings("a confidence above one", "confidence = 95\n"),
        BadInput.Settings("a number in quotes", "confidence = \"0.95\"\n"),
        BadInput.Settings("an averaging that is none", "averaging = \"average\"\n"),
        BadInput.Settings("a detector for an averaging", "averaging = \"max hold\"\n"),
        BadInput.Settings("a date that names no day", "[report]\ndate = \"yesterday\"\n"),
        BadInput.Settings("a floor taken at no known time", "[floor]\ntaken = \"before\"\n"),
        BadInput.Settings("a floor that moves by more than any does", "[floor]\nstability_db = 21\n"),
        BadInput.Settings("a section of the floor that says nothing", "[floor]\n"),
        BadInput.Settings("a leakage that is neither the same nor unknown", "[setup]\nleakage = \"none\"\n"),
        BadInput.Settings("a unit of level that cannot be used", "[setup]\nlevel_unit = \"dBV/m\"\n"),
        BadInput.Settings("a block of files whose pattern fits none",
            "[[files]]\nmatch = \"flor/*.csv\"\nlevel_columns = [\"2\"]\n"),
        BadInput.Settings("a block of files that leads out", "[[files]]\nmatch = \"../*.csv\"\nlevel_columns = [\"2\"]\n"),
        BadInput.Settings("a block of files that says nothing", "[[files]]\nmatch = \"floor/*.csv\"\n"),
        BadInput.Settings("a level and a complex number at once",
            "[[files]]\nmatch = \"reference/*.csv\"\nlevel_column = \"2\"\nreal_column = \"2\"\nimaginary_column = \"3\"\n"),
        BadInput.Settings("a unit that the file contradicts", "[[files]]\nmatch = \"reference/*.csv\"\nlevel_unit = \"dBµV\"\n"),
        BadInput.Settings("a column of levels named as the frequency",
            "[[files]]\nmatch = \"reference/*.csv\"\nfrequency_column = \"2\"\n"),
        BadInput.Settings("a band that ends before it begins", "[band]\nstart_hz = 1e9\nstop_hz = 1e6\n"),
        BadInput.Settings("a limits file that leads out", "[requirement]\nfile = \"../limits.csv\"\n"),
        BadInput.Settings("a budget outside the band", "[budget]\nfrequencies_hz = [40e6, 2e9]\n"),
        BadInput.Settings("a budget frequency with a unit", "[budget]\nfrequencies_hz = [\"40 MHz\"]\n"),
        BadInput.Settings("an uncertainty without distribution", "[[uncertainty]]\nname = \"scale\"\nhalf_width_db = 0.4\n"),
        BadInput.Settings("a level of the requirement below one half", "[requirement]\nse_db = 20\nconfidence = 0.05\n"),
        BadInput.Settings("a guard band below nothing", "[requirement]\nse_db = 20\nguard_band_db = -1\n"),
        BadInput.Settings("a mismatch of one side", "[[uncertainty]]\nname = \"receiver\"\nvswr_source = 1.5\n"),
        BadInput.Settings("a reflection stated twice",
            "[[uncertainty]]\nname = \"receiver\"\nvswr_source = 1.5\nreflection_source = 0.2\nvswr_load = 2\n"),
        BadInput.Settings("a named band of no measured frequency",
            "[[named_band]]\nname = \"low\"\nstart_hz = 31e6\nstop_hz = 39e6\n"),
        BadInput.Settings("a named band in MHz", "[[named_band]]\nname = \"low\"\nstart_hz = 30\nstop_hz = 45\n"),
        BadInput.Settings("a named band without its end", "[[named_band]]\nname = \"low\"\nstart_hz = 30e6\n"),
        BadInput.Settings("a named band that ends before it begins",
            "[[named_band]]\nname = \"low\"\nstart_hz = 40e6\nstop_hz = 30e6\n"),
        BadInput.Settings("a named band whose name nobody can read",
            "[[named_band]]\nname = \"" + new string('x', 101) + "\"\nstart_hz = 30e6\nstop_hz = 40e6\n"),
        BadInput.Settings("two named bands of one name",
            string.Concat(Enumerable.Repeat("[[named_band]]\nname = \"low\"\nstart_hz = 30e6\nstop_hz = 40e6\n", 2))),
        BadInput.Settings("thirteen named bands", string.Concat(Enumerable.Range(1, 13)
            .Select(i => $"[[named_band]]\nname = \"{i}\"\nstart_hz = 30e6\nstop_hz = 40e6\n"))),
        BadInput.Settings("named bands under a single heading",
            "[named_band]\nname = \"low\"\nstart_hz = 30e6\nstop_hz = 40e6\n"),
        BadInput.Settings("a share of all specimens", "[lots]\nshare = 1\n"),
        BadInput.Settings("lots that are the same within nothing", "[lots]\nsame_within_db = 0\n"),
        BadInput.Settings("a specimen that shields nothing and is not there", "[setup]\nshields_nothing = [\"A/A2\"]\n"),
        BadInput.Settings("a yardstick that is not there", "[choice]\nyardstick = \"A/A2\"\n"),
        new("a yardstick that two lots have", c => c.With("campaign.toml", "[choice]\nyardstick = \"A1\"\n")
            .With("covered/B/A1/c1.csv", "frequency_hz,level_dbm\n30000000,-40\n40000000,-41.5\n50000000,-42\n")),
        BadInput.Settings("a column named without its brackets", "[choice]\nshown = \"price\"\n"),
        BadInput.Settings("a column of a name that is empty", "[choice]\nshown = [\"\"]\n"),
        BadInput.Settings("a column named in two lists", "[choice]\nlower_is_better = [\"price\"]\nshown = [\"Price\"]\n"),
        BadInput.Settings("a column that is no property", "[choice]\nshown = [\"Lot\"]\n"),
        BadInput.Settings("a property without sweeps.csv", "[choice]\nshown = [\"price\"]\n"),
        BadInput.Properties("a property without a row", ""),
        BadInput.Properties("a property that sweeps.csv does not have", "reference/r1.csv,reference,,,,\n",
            "file,role,lot,specimen,cost\n"),
        BadInput.Properties("a property of a reference sweep",
            "reference/r1.csv,reference,,,12,\ncovered/A/A1/c1.csv,covered,A,A1,12,\n"),
        BadInput.Properties("two prices of one specimen",
            "reference/r1.csv,reference,,,,\ncovered/A/A1/c1.csv,covered,A,A1,12,\nfloor/f0.csv,covered,A,A1,12.5,\n"),
        BadInput.Properties("a price with its unit",
            "reference/r1.csv,reference,,,,\ncovered/A/A1/c1.csv,covered,A,A1,12 EUR,\n"),
        BadInput.Properties("a supplier of more than a hundred characters",
            "reference/r1.csv,reference,,,,\ncovered/A/A1/c1.csv,covered,A,A1,12," + new string('x', 101) + "\n"),
        BadInput.Settings("an order without sweeps.csv", "[lots]\nordered_by = \"washes\"\n"),
        BadInput.Settings("an order by a column that has a meaning of its own", "[lots]\nordered_by = \"lot\"\n"),
        BadInput.Ordered("an order that sweeps.csv does not have",
            "reference/r1.csv,reference,,\ncovered/A/A1/c1.csv,covered,A,A1\n", "file,role,lot,specimen\n"),
        BadInput.Ordered("a specimen without its number of washes",
            "reference/r1.csv,reference,,,\ncovered/A/A1/c1.csv,covered,A,A1,\n"),
        BadInput.Ordered("a number of washes in words",
            "reference/r1.csv,reference,,,\ncovered/A/A1/c1.csv,covered,A,A1,twelve\n"),
        BadInput.Ordered("a number of washes too small for any line",
            "reference/r1.csv,reference,,,\ncovered/A/A1/c1.csv,covered,A,A1,1e-200\n"),
        BadInput.Ordered("a number of washes too large for any line",
            "reference/r1.csv,reference,,,\ncovered/A/A1/c1.csv,covered,A,A1,-1e155\n"),
        new("a limits file with a word for "
            + "a number", c => c.With("campaign.toml", "[requirement]\nfile = \"limits.csv\"\n")
                .With("limits.csv", "frequency_hz,se_db\n1e6,20\n2e6,x\n")),
    ];

    private static IEnumerable<BadInput> Folders =>
    [
        new("no reference", c => c.Without("reference")),
        new("no covered sweep", c => c.Without("covered")),
        new("a folder whose name is mistyped", c => c.With("refrence/r2.csv", "frequency_hz,level_dbm\n1,2\n3,4\n")),
        new("sweeps in dBm and sweeps in dB",
            c => c.With("covered/A/A1/c1.csv", "frequency_hz,level_db\n30000000,-40\n40000000,-41\n50000000,-42\n")),
        new("no frequency in common", c => c.With("covered/A/A1/c1.csv", "frequency_hz,level_dbm\n1,-40\n2,-41\n3,-42\n")),
        new("an option that is none", _ => { }) { Words = ["--confidense", "0.9"] },
        new("a confidence that is no number", _ => { }) { Words = ["--confidence", "0,9"] },
    ];

    private static byte[] Noise(int length)
    {
        byte[] noise = new byte[length];
        new Random(3).NextBytes(noise);
        return noise;
    }

    private static void TenMillionRows(FileStream stream)
    {
        stream.Write("frequency_hz,level_dbm\n"u8);
        byte[] rows = new byte[100_000 * 4];
        for (int i = 0; i < rows.Length; i += 4)
        {
            "1,2\n"u8.CopyTo(rows.AsSpan(i));
        }

        for (int i = 0; i < 100; i++)
        {
            stream.Write(rows);
        }
    }
}
