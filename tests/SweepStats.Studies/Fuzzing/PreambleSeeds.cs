namespace SweepStats.Studies.Fuzzing;

/// <summary>Tables with settings, markers, sections or blocks around them.</summary>
internal static class PreambleSeeds
{
    public static IEnumerable<FuzzSeed> All =>
    [
        FuzzSeed.Of("keys.csv", "Model,Analyser\nStart,30000000\nStop,69000000\nRBW,9000\nVBW,30 kHz\nDetector,Sample\nSweep "
            + "Time,0.25\nAttenuation,10\nPoints,40\nUnit,dBuV\nDATA\n" + SeedRows.Of(40, 30e6, 1e6, "{0},{3:F9}")),
        FuzzSeed.Of("keys-units.csv", "sep=;\nType;Receiver;\nDate;05/03/2024;\nRBW;300000.0;Hz\nRef "
            + "Level;-10;dBm\nDetector;RMS;\nTrace Mode;Max Hold;\ny-Unit;dBm;\nValues;40;\n"
            + SeedRows.Of(40, 1e7, 1e5, "{0};{1:F4};")),
        FuzzSeed.Of("begin-end.csv", "! ANALYSER EXPORT\n! DATE 2024-03-05 10:11:12\n! RBW 9 kHz\n! DATA UNIT dBm\n! DATA FREQ "
            + "Hz\nBEGIN\n" + SeedRows.Of(40, 100000, 5000, "{0},{1:F2},0,0,0") + "END\n"),
        FuzzSeed.Of("sections.csv", "[Header]\r\nVersion,2\n\n[Settings]\nRBW,1e3,Hz\nVBW,1e3,Hz\nDetector,Peak\n[Markers]\n"
            + "NumberMarkers,2\n1,57.4,1000000\n2,20.1,2000000\n[Traces]\nNumberTraces,1\n[Trace]\nTrace "
            + "1,,dBuVPerMeter,Peak,Normal\nNumberPoints,40\nXStart,1e6,Hz\nXStop,1.39e6,Hz\n"
            + SeedRows.Of(40, 1e6, 1e4, "{3:R},{0:F20}") + "\n[End]\n"),
        FuzzSeed.Of("pairs-above.csv", "Start Freq,1e5,Stop Freq,3e7\nRBW,10kHz,VBW,30kHz\nTrace "
            + "Data:(Unit:dBm)\nFrequency(Hz),Trace1(VIEW),Trace2(BLANK),Trace3(MAXH)\n"
            + SeedRows.Of(40, 100000, 10000, "{0},{1:F3},-2147.48,{2:F3},")),
        FuzzSeed.Of("comments.txt",
            "# Spectrum of the cabin\n% made by hand\n! Stimulus(Hz)\tS21(dB)\n" + SeedRows.Of(40, 1e9, 1e7, "{0}\t{1:F5}")),
        FuzzSeed.Of("blocks.csv", "Trace A\nFrequency (Hz),Level (dBm)\n" + SeedRows.Of(20, 1e6, 1e5, "{0},{1:F3}")
            + "\nTrace B\nFrequency (Hz),Phase (deg)\n" + SeedRows.Of(20, 1e6, 1e5, "{0},{3:F3}")),
        FuzzSeed.Of("channel-blocks.csv", "!CSV A.01\n!Analyser\n\nBEGIN CH1_DATA\nFreq(Hz),S11 Log Mag(dB),S21 Log Mag(dB)\n"
            + SeedRows.Of(20, 1e9, 1e7, "{0},{1:F3},{2:F3}") + "END\n\nBEGIN CH2_DATA\nFreq(Hz),S12(REAL),S12(IMAG)\n"
            + SeedRows.Of(20, 1e9, 1e7, "{0},{3:F3},{1:F3}") + "END\n"),
        FuzzSeed.Of("marker-table.csv", "Marker,Frequency,Level\n1,31000000,-70.2\n2,33000000,-71.5\n3,35000000,-72.0\n\nLimit: "
            + "passed\nFrequency [Hz];Level [dBm]\nfrequency_hz,level_dbm\n"
            + SeedRows.Of(40, 30e6, 1e6, "{0},{1:F2}") + ",,\n\n"),
        FuzzSeed.Of("blank-trace.csv", "Frequency (Hz),T1 (dBm),T2 (dBm)\n" + SeedRows.Of(40, 1e6, 1e4, "{0},{1:F2},0.00")),
        FuzzSeed.Of("correction.csv", "Antenna factor\nFrequency (MHz),AF (dB/m)\n" + SeedRows.Of(12, 30, 10, "{0},{3:F1}")),
        FuzzSeed.Of("cut-off.csv",
            "Points,1001\nFrequency (Hz),Level (dBm)\n" + SeedRows.Of(25, 1e6, 1e4, "{0},{1:F2}") + "1260000,-7"),
        FuzzSeed.Of("header-only.csv", "RBW,9000\nFrequency (Hz),Level (dBm)\n"),
        FuzzSeed.Of("dates.csv", "Date,03/04/2024\nTime,10:11:12 PM\nAverage,16\nAvg Type,Log-Power\nfrequency;level\nMHz;dBµV\n"
            + SeedRows.WithCommas(20, 30, 0.5, "{0};{3:F3}")),
    ];
}
