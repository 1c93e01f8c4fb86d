using System.Text;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Places;
using SweepStats.Files.Proposals;

namespace SweepStats.Files.Results;

/// <summary>Writes a campaign folder to fill in.</summary>
public static class CampaignTemplate
{
    private const string Settings =
        """
        ## Settings of this campaign. Lines that start with '##' are remarks. To use a line that starts with one '#', take that '#' away.
        ## Frequencies are in Hz, levels in dBm, ratios in dB. Whatever is left out has its default.

        # title = "Curtain of the receiver cabin"

        ## Marks every report of sweeps that were drawn by a model; rehearse writes it.
        # rehearsed = true

        ## How the receiver makes one reading of its looks: "power" (RMS detector), "log" (log or video averaging),
        ## "sample" (one look), "peak" (peak or quasi-peak detector, max hold) or "lowest" (negative peak detector, min hold).
        ## Left out: what the files say of it is taken. Where they say nothing the intervals hold for power and for log averaging;
        ## they then do not hold for "lowest", and for "peak" only where the floor readings show it.
        # averaging = "power"

        ## Level of all intervals.
        confidence = 0.95

        ## What stands at the head of the report. Whatever is left out has a line there to fill in by hand.
        # [report]
        # laboratory = "Receiver laboratory, north hut"
        # customer = "Telescope operations"
        # operator = "who took the sweeps"
        # instrument = "receiver, source and antennas, with their numbers"
        # calibration = "certificate, and until when it holds"
        # date = "2026-10-05"       # left out: the days on which the sweeps were taken, where these say it

        [setup]
        # rbw_hz = 10e3             # resolution bandwidth, where the files do not state it
        # attenuation_db = 10       # input attenuation
        # source_dbm = 10           # level at the source for reference and covered; linearity sweeps are held against it
        # max_input_dbm = -10       # highest level that the receiver shows without error
        # impedance_ohm = 50        # for files in V, mV, µV, dBµV or dBmV
        # frequency_unit = "MHz"    # for files that do not say: Hz, kHz, MHz, GHz
        # level_unit = "dBm"        # for files that do not say: dBm, dBµV, dBmV, dB, dBµV/m, V, mV, µV, W, mW
        # leakage = "same"          # or "unknown": whether the floor's leakage is the same with and without the specimen

        ## Take floor and reference sweeps before AND after the specimens, and note their times (taken_at in sweeps.csv).
        # [floor]
        # taken = "before-and-after"   # or "once"; left out: the times tell
        # stability_db = 0.5           # how far the floor moves at most after it was measured once
        # declared_dbm = -104          # only where no floor sweeps were taken

        # [reference]
        # taken = "before-and-after"   # or "once"; left out: the times tell

        ## Only where not all frequencies count:
        # [band]
        # start_hz = 30e6
        # stop_hz = 1e9
        # interpolate = true           # sweeps on other frequencies are brought onto those of the covered sweeps

        ## What the curtain has to do: one value, or points joined over log frequency, or a file with the columns frequency_hz and se_db.
        # [requirement]
        # se_db = 20
        ## points = [[30e6, 20], [1e9, 40]]   # in place of se_db
        ## file = "limits.csv"                 # in place of se_db
        # margin_db = 6             # dynamic range wanted beyond that
        # confidence = 0.95         # one-sided level of "meets" and of "fails"; left out: the level of all intervals; 0.5: the measured value alone decides
        # guard_band_db = 0         # to meet, the lower limit has to lie this much above the requirement

        ## Errors that repeats do not show; one block each.
        # [[uncertainty]]
        # name = "scale fidelity"
        # half_width_db = 0.4
        # distribution = "rectangular"   # normal (k = 2, dof), rectangular, triangular, trapezoidal (top_half_width_db) or arcsine
        # acts_on = "covered"            # reference, covered or both
        # common = false                 # true: the same error in both, which cancels; false with acts_on = "both": each has its own, so it counts twice

        ## Mismatch may be given by the reflections of both sides in place of half_width_db and distribution:
        # [[uncertainty]]
        # name = "mismatch at the receiver"
        # distribution = "mismatch"      # arcsine; half-width 20 log10(1 - product of the magnitudes), the wider side
        # reflection_source = 0.2        # magnitude; or vswr_source = 1.5, or return_loss_source_db = 14
        # reflection_load = 0.33         # magnitude; or vswr_load = 2, or return_loss_load_db = 9.5
        # acts_on = "both"

        ## Where the uncertainty comes from is told for the weakest frequency of each specimen, or for these.
        # [budget]
        # frequencies_hz = [100e6, 433.9e6]

        ## Parts of the band that matter by themselves; one block each, up to 12.
        # [[named_band]]
        # name = "communications"
        # start_hz = 225e6
        # stop_hz = 400e6

        ## When lots are compared:
        # [lots]
        # same_within_db = 1        # lots whose means differ by less count as the same
        # share = 0.95              # share of the specimens of a lot that its tolerance limit holds for
        # ordered_by = "washes"     # a column of your own in sweeps.csv with one number for each specimen, such as washes, folds or months: how the
        #                           # shielding changes along it, and up to where the requirement is met

        ## When one specimen is to be chosen. The lists name columns of your own in sweeps.csv; their cells tell of the specimen.
        # [choice]
        # yardstick = "autumn/A1"           # held against the others and no candidate; the specimen alone where only one lot has it
        # lower_is_better = ["price_eur"]   # numbers
        # higher_is_better = []             # numbers
        # shown = ["supplier"]              # shown and not weighed

        ## Field strengths, for the question what remains behind the curtain.
        # [field]
        # threat_v_per_m = 50e3     # steady field in front of the curtain: what is left of it at most behind each specimen is told
        # tolerable_v_per_m = 5e3   # may be left out
        # outside = "none"          # what sweepstats field takes for the shielding outside the band, for a pulse: none, hold (the end's reading) or slope
        # pulse_peak_v_per_m = 50e3 # a pulse of your own; the early-time pulse of IEC 61000-2-9 unless stated. All three, or none
        # pulse_alpha_per_s = 4e7   # decay
        # pulse_beta_per_s = 6e8    # rise

        ## Which columns and units some files have, where they do not say it; one block each, the first whose pattern matches a file holds for it.
        ## * stands for characters within a name, ** for folders. Columns go by their header or by their number from 1.
        ## In place of level_columns may stand real_column and imaginary_column: the level is the magnitude of a complex ratio.
        # [[files]]
        # match = "covered/**/*.txt"
        # frequency_column = "1"
        # level_columns = ["3"]
        # phase_column = "4"         # of the one level; phase_unit = "deg" or "rad" where its header does not say
        # frequency_unit = "MHz"
        # level_unit = "dBm"         # or "linear": the magnitude of a ratio

        """;

    private const string Manifest =
        """
        file,role,lot,specimen,placement,column,taken_at,source_dbm,exclude
        # One row a sweep; rows that start with '#' are remarks. As long as no row is filled in, the folders say the role:
        # floor/, reference/, covered/<lot>/<specimen>/<placement>/, linearity/, plate/.
        # Columns of your own, such as price_eur, go behind these once [choice] or [lots] in campaign.toml names them; one row of each specimen is enough.
        # floor/f01.csv,floor,,,,,2026-03-05T09:00:00,,
        # reference/r01.csv,reference,,,,,2026-03-05T09:10:00,10,
        # covered/autumn/a1-p1.csv,covered,autumn,A1,p1,,2026-03-05T09:20:00,10,
        # covered/autumn/a1-p2.csv,covered,autumn,A1,p2,Trace 2,2026-03-05T09:30:00,10,
        # covered/autumn/a1-p3.csv,covered,autumn,A1,p3,,2026-03-05T09:40:00,10,door stood open
        # reference/r02.csv,reference,,,,,2026-03-05T09:50:00,10,
        # floor/f02.csv,floor,,,,,2026-03-05T10:00:00,,

        """;

    private static readonly string[] Folders = ["floor", "reference", "covered"];

    /// <summary>Writes campaign.toml and sweeps.csv, and makes the folders floor, reference and covered.</summary>
    /// <param name="folder">Where; made where missing.</param>
    /// <exception cref="IOException">One of the files is already there; nothing is written then.</exception>
    public static void Write(string folder)
    {
        RefuseOverwriting(folder);
        var made = new MadeFolders();
        try
        {
            made.Make(folder);
            foreach (string name in Folders)
            {
                made.Make(Path.Combine(folder, name));
            }

            Write(folder, Settings, Manifest);
        }
        catch
        {
            made.Undo();
            throw;
        }
    }

    /// <summary>
    /// Writes campaign.toml and sweeps.csv for the trace files that a folder holds. None of them is moved or changed.
    /// </summary>
    /// <param name="folder">The folder.</param>
    /// <param name="proposal">What it may be.</param>
    /// <returns>sweeps.csv as it was written.</returns>
    /// <exception cref="IOException">One of the files is already there; nothing is written then.</exception>
    public static ProposedManifest Write(string folder, FolderProposal proposal)
    {
        RefuseOverwriting(folder);
        var manifest = new ProposedManifest(proposal);
        Write(folder, ProposedSettings.Of(Settings, proposal), manifest.Text);
        return manifest;
    }

    /// <summary>Refuses a folder that is a campaign already.</summary>
    /// <param name="folder">The folder.</param>
    /// <exception cref="IOException">campaign.toml or sweeps.csv is already there.</exception>
    public static void RefuseOverwriting(string folder)
    {
        if (LostLink.Of(folder, "name another folder") is { } lost)
        {
            throw new IOException(lost.ToString());
        }

        if (File.Exists(folder))
        {
            throw new IOException($"'{folder}' is a file, not a folder. Name a folder.");
        }

        foreach (string path in new[] { CampaignFolder.SettingsName,
            CampaignFolder.ManifestName }.Select(n => Path.Combine(folder, n)).Where(Path.Exists))
        {
            throw new IOException($"'{path}' is already there. Name a new folder; this one is a campaign.");
        }
    }

    private static void Write(string folder, string settings, string manifest)
    {
        try
        {
            using GatheredFile settingsFile = Gathered(folder, CampaignFolder.SettingsName, settings),
                manifestFile = Gathered(folder, CampaignFolder.ManifestName, manifest);
            GatheredFile.CommitBoth(manifestFile, settingsFile);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw WriteFault.Of(e, folder, "the campaign", "name another folder");
        }
    }

    private static GatheredFile Gathered(string folder, string name, string text)
    {
        var file = new GatheredFile(Path.Combine(folder, name));
        try
        {
            file.Content.Write(new UTF8Encoding(false).GetBytes(text));
            file.Finish();
            return file;
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }
}
