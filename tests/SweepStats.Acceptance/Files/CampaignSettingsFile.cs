using SweepStats.Fields;
using SweepStats.Files;
using SweepStats.Files.Campaigns;
using SweepStats.Quantities;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Acceptance.Files;

public sealed class CampaignSettingsFile : IDisposable
{
    private readonly ScratchFolder _folder = new ScratchFolder().WithUsualSweeps();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void EveryKeyReachesThePlan()
    {
        CampaignReading reading = Read(
            """
            title = "Receiver cabin curtain, autumn lots"
            averaging = "power"
            confidence = 0.9
            [setup]
            rbw_hz = 10e3
            attenuation_db = 10
            source_dbm = 11
            max_input_dbm = -10
            impedance_ohm = 75
            frequency_unit = "MHz"
            level_unit = "dBµV"
            [floor]
            declared_dbm = -104
            [band]
            start_hz = 30e6
            stop_hz = 1e9
            [requirement]
            se_db = 20
            margin_db = 5
            confidence = 0.8
            guard_band_db = 1.5
            [[uncertainty]]
            name = "scale fidelity"
            half_width_db = 0.4
            distribution = "rectangular"
            acts_on = "both"
            common = true
            [[uncertainty]]
            name = "mismatch"
            half_width_db = 0.6
            distribution = "normal"
            k = 3
            dof = 12
            [[uncertainty]]
            name = "cable"
            half_width_db = 0.5
            distribution = "trapezoidal"
            top_half_width_db = 0.2
            [[uncertainty]]
            name = "mismatch at the receiver"
            distribution = "mismatch"
            vswr_source = 1.5
            return_loss_load_db = 20
            acts_on = "both"
            [budget]
            frequencies_hz = [30e6,
              40e6]
            [field]
            threat_v_per_m = 50e3
            tolerable_v_per_m = 5e3
            """);
        Assert.Equal("", string.Join('\n', reading.Faults));
        AnalysisPlan plan = reading.Plan;
        Assert.Equal("Receiver cabin curtain, autumn lots", reading.Campaign!.Title);
        Assert.Equal((Averaging.Power, 0.9), (plan.Averaging, plan.Confidence.Level));
        Assert.Equal((10e3, 10.0, 11.0, -10.0),
            (plan.Setup.ResolutionBandwidthHz, plan.Setup.AttenuationDb, plan.SourceDbm, plan.MaximumInputDbm));
        Assert.Equal((-104.0, 5.0), (plan.DeclaredFloorDb, plan.Margin.Value));
        Assert.Equal(new FrequencyBand(new Hertz(30e6), new Hertz(1e9)), plan.Band);
        Assert.Equal([30e6, 40e6], plan.BudgetFrequencies.Select(f => f.Value));
        Assert.Equal(20, plan.Requirement!.At(new Hertz(1e6))!.Value.Value);
        Assert.Equal(
            new UncertaintyEntry
            {
                Name = "scale fidelity",
                HalfWidthDb = 0.4,
                Distribution = ErrorDistribution.Rectangular,
                ActsOn = ErrorActsOn.Both,
                Common = true,
            }, plan.Uncertainties[0]);
        Assert.Equal(0.2, plan.Uncertainties[1].StandardUncertaintyDb, 12);
        Assert.Equal((12, 0.2), (plan.Uncertainties[1].DegreesOfFreedom, plan.Uncertainties[2].TopHalfWidthDb));
        Assert.Equal((0.8, 1.5), (plan.Rule!.Level.Level, plan.Rule.GuardBand.Value));
        // By hand: |Γ| 0.2 and 0.1, so 20·log10(1 − 0.02) = −0.175478.
        Assert.Equal((ErrorDistribution.Arcsine, 2),
            (plan.Uncertainties[3].Distribution, plan.Uncertainties[3].TimesInDifference));
        Assert.Equal(0.175478, plan.Uncertainties[3].HalfWidthDb, 6);
        Assert.Equal((0.2, 0.1),
            (plan.Uncertainties[3].Mismatch!.Source.Magnitude, Math.Round(plan.Uncertainties[3].Mismatch!.Load.Magnitude, 12)));
        Assert.Equal(new FieldThreat(50e3, 5e3), plan.Field);
    }

    [Fact]
    public void WhatIdentifiesTheTestReachesTheCampaign()
    {
        CampaignReading reading = Read(
            """
            [report]
            laboratory = "North hut"
            customer = "Telescope & cabin"
            operator = " O. Perator "
            instrument = "receiver no. 4"
            calibration = "certificate 17"
            date = "5 October"
            """);
        Assert.Equal("", string.Join('\n', reading.Faults));
        var stated = new TestIdentity
        {
            Laboratory = "North hut",
            Customer = "Telescope & cabin",
            Operator = "O. Perator",
            Instrument = "receiver no. 4",
            Calibration = "certificate 17",
            Date = "5 October",
        };
        Assert.Equal(stated, reading.Campaign!.Identity);
        Assert.Equal(stated with { Customer = null },
            Analysis.Run(reading.Campaign with { Identity = stated with { Customer = null } }, reading.Plan).Identity);
        Assert.Equal(TestIdentity.Unstated, Read("").Campaign!.Identity);
    }

    [Theory]
    [InlineData("laboratory = 7", "campaign.toml:2: report.laboratory is not a text; put it into double quotes")]
    [InlineData("customer = \"\"", "campaign.toml:2: report.customer is empty; fill it in, or remove the key")]
    [InlineData("labratory = \"x\"", "campaign.toml:2: there is no key 'labratory' in [report] (did you mean 'laboratory'?); "
        + "use laboratory, customer, operator, instrument, calibration, date")]
    public void WhatIdentifiesTheTestIsReadStrictly(string line, string fault) =>
        Assert.Equal([fault], Read($"[report]\n{line}\n").Faults.Select(f => f.ToString()));

    [Fact]
    public void WhatIsLeftOutHasTheDefaultsOfThePlan()
    {
        CampaignReading reading = Read("");
        Assert.Empty(reading.Faults);
        Assert.Equal(new AnalysisPlan().Margin, reading.Plan.Margin);
        Assert.Equal((Averaging.Unknown, 0.95), (reading.Plan.Averaging, reading.Plan.Confidence.Level));
        Assert.Null(reading.Plan.Requirement);
        Assert.Null(reading.Plan.Rule);
        Assert.Null(reading.Plan.Field);
        AnalysisPlan asked = Read("confidence = 0.9\n[requirement]\nse_db = 20\n").Plan;
        Assert.Equal((0.9, 0.0), (asked.Rule!.Level.Level, asked.Rule.GuardBand.Value));
    }

    [Theory]
    [InlineData("reflection_source = 0.2\nreflection_load = 0.33", 0.59306)]
    [InlineData("vswr_source = 1.5\nvswr_load = 1.5", 0.3546)]
    [InlineData("vswr_source = 2\nreflection_load = 0.0909090909", 0.2673)]
    [InlineData("return_loss_source_db = 9.542425\nvswr_load = 2", 1.0231)]
    public void TwoReflectionsAreAMismatch(string keys, double halfWidth)
    {
        // Lower sides of the table of fixtures/published/mismatch; the first by hand, 20·log10(1 − 0.066).
        UncertaintyEntry entry = Assert.Single(Read($"[[uncertainty]]\nname = \"m\"\n{keys}\n").Plan.Uncertainties);
        Assert.Equal(halfWidth, entry.HalfWidthDb, 4);
        Assert.Equal(halfWidth / Math.Sqrt(2), entry.StandardUncertaintyDb, 4);
    }

    [Fact]
    public void ARequirementMayBePointsOrAFile()
    {
        // Halfway between 30 MHz and 300 MHz on a log axis lies 30·√10 MHz, so the asked value is halfway between 20 and 40 dB.
        var half = new Hertz(30e6 * Math.Sqrt(10));
        Assert.Equal(30, Read("[requirement]\npoints = [[30e6, 20], [300e6, 40]]\n").Plan.Requirement!.At(half)!.Value.Value, 9);
        _folder.With("mask.csv", "frequency_hz,se_db\n30e6,20\n300000000,40\n");
        CampaignReading reading = Read("[requirement]\nfile = \"mask.csv\"\n");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(30, reading.Plan.Requirement!.At(half)!.Value.Value, 9);
        Assert.Contains("mask.csv", reading.Inputs.Select(i => i.Path));
    }

    [Theory]
    [InlineData("confidense = 0.9", 1, "there is no key 'confidense' at the top (did you mean 'confidence'?)", "title")]
    [InlineData("confidence = 1.5", 1, "confidence is 1.5, which is out of range", "0.5 to 0.9999")]
    [InlineData("confidence = nan", 1, "out of range", "0.5 to 0.9999")]
    [InlineData("confidence = \"0.9\"", 1, "confidence is not a number", "without quotes")]
    [InlineData("title = 7", 1, "title is not a text", "double quotes")]
    [InlineData("title = \"\"", 1, "title is empty", "fill it in")]
    [InlineData("averaging = \"powr\"", 1, "averaging is 'powr' (did you mean 'power'?)", "\"log\"")]
    [InlineData("averaging = \"rms\"", 1, "averaging is 'rms'", "write \"power\"")]
    [InlineData("averaging = \"Video\"", 1, "averaging is 'Video'", "write \"log\"")]
    [InlineData("averaging = \"average\"", 1, "averaging is 'average', not one of power, log, sample, peak and lowest",
        "\"power\" for power (RMS), \"log\"")]
    [InlineData("averaging = \"linear\"", 1, "averaging is 'linear'", "leave averaging out")]
    [InlineData("averaging = 3", 1, "averaging is not a text", "\"power\"")]
    [InlineData("[requirement]\nmargin_db = 6\nfile = \"limits.csv\"", 3, "the limits file 'limits.csv' is not there",
        "relative to campaign.toml")]
    [InlineData("\n[setupp]\nrbw_hz = 1", 2, "there is no section [setupp] (did you mean 'setup'?)", "field")]
    [InlineData("[setup]\nrbw = 1", 2, "there is no key 'rbw' in [setup]", "rbw_hz")]
    [InlineData("[setup]\nrbw_hz = -1", 2, "setup.rbw_hz is -1", "choose a value")]
    [InlineData("[setup]\nfrequency_unit = \"THz\"", 2, "setup.frequency_unit is 'THz'", "\"GHz\"")]
    [InlineData("[setup]\nlevel_unit = \"dBV/m\"", 2, "setup.level_unit is 'dBV/m'", "dBµV")]
    [InlineData("[floor]", 1, "section [floor] says nothing", "stability_db")]
    [InlineData("[band]\nstart_hz = 1e9\nstop_hz = 1e6", 3, "below its start", "400 MHz is 400e6")]
    [InlineData("[requirement]\nse_db = 20\npoints = [[1, 2], [3, 4]]", 3, "stated in more than one way", "keep one")]
    [InlineData("[requirement]\nmargin_db = 6", 1, "requirement.se_db is missing", "se_db")]
    [InlineData("[requirement]\npoints = [[1, 2]]", 2, "at least two points", "se_db")]
    [InlineData("[requirement]\npoints = [[2, 2], [1, 4]]", 2, "does not continue a rising line", "rise")]
    [InlineData("[requirement]\nse_db = -40", 2, "requirement.se_db is -40", "0 to 300")]
    [InlineData("[requirement]\nse_db = 1e308", 2, "requirement.se_db is 1E+308", "0 to 300")]
    [InlineData("[requirement]\nse_db = nan", 2, "requirement.se_db is NaN", "0 to 300")]
    [InlineData("[requirement]\npoints = [[30e6, 20], [1e9, -40]]", 2, "point 2 of the requirement asks for -40 dB",
        "0 to 300 dB")]
    [InlineData("[requirement]\npoints = [[30e6, 20], [1e9, 1e308]]", 2, "point 2 of the requirement asks for 1E+308 dB",
        "0 to 300 dB")]
    [InlineData("[requirement]\npoints = [[30e6, nan], [1e9, 20]]", 2, "point 1 of the requirement asks for NaN dB",
        "0 to 300 dB")]
    [InlineData("[requirement]\npoints = [[30e6, 20], [1e308, 20]]", 2, "does not continue a rising line", "rise")]
    [InlineData("[requirement]\npoints = [[nan, 20], [1e9, 20]]", 2, "does not continue a rising line", "rise")]
    [InlineData("[requirement]\npoints = [1, 2]", 2, "not a list of pairs", "[[30e6, 20], [1e9, 40]]")]
    [InlineData("[requirement]\nfile = \"../limits.csv\"", 2, "leads out of the campaign", "beside campaign.toml")]
    [InlineData("[uncertainty]\nname = \"a\"", 1, "wrong brackets", "[[uncertainty]]")]
    [InlineData("[[uncertainty]]\nname = \"a\"\nhalf_width_db = 1", 1, "uncertainty.distribution is missing", "distribution")]
    [InlineData("[[uncertainty]]\nname = \"a\"\nhalf_width_db = 1\ndistribution = \"rectangular\"\nk = 2", 5,
        "normal distribution only", "remove k")]
    [InlineData("[[uncertainty]]\nname = \"a\"\nhalf_width_db = 1\ndistribution = \"arcsine\"\ndof = 9", 5,
        "dof goes with a normal", "remove dof")]
    [InlineData("[[uncertainty]]\nname = \"a\"\nhalf_width_db = 1\ndistribution = \"trapezoidal\"\ntop_half_width_db = 2", 5,
        "wider than the whole", "at most half_width_db")]
    [InlineData("[[uncertainty]]\nname = \"a\"\nhalf_width_db = 1\ndistribution = \"arcsine\"\ncommon = 1", 5,
        "neither true nor false", "without quotes")]
    [InlineData("[requirement]\nse_db = 20\nconfidence = 0.4", 3, "requirement.confidence is 0.4", "0.5 to 0.9999")]
    [InlineData("[requirement]\nse_db = 20\nguard_band_db = -1", 3, "requirement.guard_band_db is -1", "0 to 100")]
    [InlineData("[[uncertainty]]\nname = \"a\"\nvswr_source = 2", 3, "that of the load is missing",
        "add reflection_load, vswr_load or return_loss_load_db")]
    [InlineData("[[uncertainty]]\nname = \"a\"\nvswr_source = 2\nreflection_source = 0.3\nvswr_load = 2", 3,
        "the source is stated in more than one way", "keep one of reflection_source, vswr_source")]
    [InlineData("[[uncertainty]]\nname = \"a\"\nvswr_source = 2\nvswr_load = 2\nhalf_width_db = 1", 5,
        "half_width_db does not go with two reflections", "or the reflections")]
    [InlineData("[[uncertainty]]\nname = \"a\"\nvswr_source = 2\nvswr_load = 2\ndistribution = \"normal\"", 5,
        "two reflections is a mismatch", "leave it out")]
    [InlineData("[[uncertainty]]\nname = \"a\"\nhalf_width_db = 1\ndistribution = \"mismatch\"", 4,
        "without its two reflections", "arcsine")]
    [InlineData("[[uncertainty]]\nname = \"a\"\nvswr_source = 0.5\nvswr_load = 2", 3, "uncertainty.vswr_source is 0.5", "1 to")]
    [InlineData("[[uncertainty]]\nname = \"a\"\nreflection_source = 1\nreflection_load = 1", 4, "the level may vanish",
        "as it was measured")]
    [InlineData("[[uncertainty]]\nname = \"a\"\nhalf_width_db = 1\ndistribution = \"arcsine\"\nacts_on = "
        + "\"covered\"\ncommon = true", 6, "acts on both", "acts_on = \"both\"")]
    [InlineData("[[uncertainty]]\nname = \"a\"\nhalf_width_db = 1\ndistribution = \"trapezoidal\"", 1,
        "uncertainty.top_half_width_db is missing", "top_half_width_db")]
    [InlineData("[[uncertainty]]\nname = \"a\"\nhalf_width_db = 1\ndistribution = \"arcsine\"\n[[uncertainty]]\nname = "
        + "\"A\"\nhalf_width_db = 1\ndistribution = \"arcsine\"", 6, "another error of the name 'A'", "its own name")]
    [InlineData("[budget]", 1, "budget.frequencies_hz is missing", "frequencies_hz")]
    [InlineData("[budget]\nfrequencies_hz = 30e6", 2, "not a list of numbers", "[30e6, 1e9]")]
    [InlineData("[budget]\nfrequencies_hz = [30e6,\n \"40e6\"]", 3, "not a list of numbers", "[30e6, 1e9]")]
    [InlineData("[budget]\nfrequencies_hz = [-1]", 2, "holds -1, which is out of range", "0 to")]
    [InlineData("[budget]\nfrequencies_hz = [1,2,3,4,5,6,7,8,9,10,11,12,13,14,15,16,17,18,19,20,21]", 2, "21 frequencies",
        "keep those that matter")]
    [InlineData("[budget]\nfrequencies_hz = [30e6,\n 2e9]", 3, "2000000000 Hz lies outside the analysed band", "30000000 to")]
    [InlineData("[band]\nstart_hz = 35e6\n[budget]\nfrequencies_hz = [30e6]", 4, "30000000 Hz lies outside the analysed band",
        "35000000 to")]
    [InlineData("[requirement]\npoints = [[30, 20], [1000, 40]]", 2,
        "asks from 30 to 1000 Hz, and the analysed band is 30000000 to", "frequencies are in Hz: did you mean 30e6?")]
    [InlineData("[field]\ntolerable_v_per_m = 1", 1, "field.threat_v_per_m is missing", "threat_v_per_m")]
    [InlineData("[field]\nthreat_v_per_m = 0", 2, "field.threat_v_per_m is 0, which is out of range", "1E-12 to")]
    [InlineData("[field]\nthreat_v_per_m = nan", 2, "field.threat_v_per_m is NaN, which is out of range", "1E-12 to")]
    [InlineData("[field]\nthreat = 5", 2, "there is no key 'threat' in [field]", "threat_v_per_m")]
    [InlineData("title = ", 1, "this is not TOML", "double quotes")]
    [InlineData("title = \"a\"\ntitle = \"b\"", 2, "", "")]
    [InlineData("setup.rbw_hz = 1", 1, "there is no key 'setup.rbw_hz'", "")]
    [InlineData("[band]\nstart_hz = 1\n[band]\nstop_hz = 5", 3, "", "")]
    public void ABadKeyIsRefusedWithItsLine(string text, int line, string problem, string remedy)
    {
        CampaignReading reading = CampaignFolderOf(text);
        Assert.Null(reading.Campaign);
        ReadFault? fault = reading.Faults.FirstOrDefault(
            f => f.File == "campaign.toml" && f.Line == line && f.Problem.Contains(problem, StringComparison.Ordinal));
        Assert.True(fault is not null, string.Join('\n', reading.Faults));
        Assert.Contains(remedy, fault.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("frequency_hz,db\n1,2\n2,3\n", 1, "the columns are not frequency_hz and se_db")]
    [InlineData("frequency_hz,se_db\n1,2\n2,x\n", 3, "the row is not two numbers")]
    [InlineData("frequency_hz,se_db\n2,2\n1,3\n", 3, "does not continue a rising line")]
    [InlineData("frequency_hz,se_db\n2,2\n", 2, "at least two points")]
    [InlineData("frequency_hz,se_db\n30000000,20\n1000000000,-40\n", 3, "point 2 of the requirement asks for -40 dB")]
    [InlineData("frequency_hz,se_db\n30000000,1e308\n1000000000,20\n", 2, "point 1 of the requirement asks for 1E+308 dB")]
    [InlineData("frequency_hz,se_db\n30000000,20\n1000000000,NaN\n", 3, "the row is not two numbers")]
    [InlineData("# nothing\n", 1, "the columns are not frequency_hz and se_db")]
    public void ABadLimitsFileIsRefusedWithItsLine(string text, int line, string problem)
    {
        _folder.With("limits.csv", text);
        ReadFault fault = Assert.Single(CampaignFolderOf("[requirement]\nfile = \"limits.csv\"\n").Faults);
        Assert.Equal(("limits.csv", line), (fault.File, fault.Line!.Value));
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void ALimitsFileInMegahertzIsRefused()
    {
        _folder.With("limits.csv", "frequency_hz,se_db\n30,20\n1000,40\n");
        ReadFault fault = Assert.Single(CampaignFolderOf("[requirement]\nfile = \"limits.csv\"\n").Faults);
        Assert.Equal("limits.csv", fault.File);
        Assert.Contains("did you mean 30e6?", fault.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void AllBadKeysAreListedInOneRunInTheOrderOfTheirLines() => Assert.Equal(
        [1, 2, 4, 5],
        CampaignFolderOf("a = 1\nconfidence = 2\n[setup]\nb = 1\nrbw_hz = \"x\"\n").Faults.Select(f => f.Line!.Value));

    private CampaignReading Read(string text) => CampaignFolderOf(text);

    private CampaignReading CampaignFolderOf(string text) => _folder.With("campaign.toml", text).Read(keepGoing: true);
}
