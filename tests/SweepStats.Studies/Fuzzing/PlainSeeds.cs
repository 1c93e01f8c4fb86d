namespace SweepStats.Studies.Fuzzing;

/// <summary>Tables with little or nothing above them: separators, decimal marks, quotes, units, columns.</summary>
internal static class PlainSeeds
{
    public static IEnumerable<FuzzSeed> All =>
    [
        FuzzSeed.Of("comma.csv", "frequency_hz,level_dbm\n" + SeedRows.Of(40, 30e6, 1e6, "{0},{1:F2}")),
        FuzzSeed.Of("semicolon-decimal-commas.csv",
            "Frequenz [MHz];Pegel [dBm]\n" + SeedRows.WithCommas(40, 30.5, 0.25, "{0:F3};{1:F2}")),
        FuzzSeed.Of("tabs.txt", "Freq (kHz)\tLevel (dBuV)\n" + SeedRows.Of(40, 150, 5.5, "{0:F1}\t{3:F3}")),
        FuzzSeed.Of("blanks.dat", "Frequency (MHz)   Level (dBm)\n" + SeedRows.Of(40, 30, 2, "  {0,10:F4}    {1,9:F3}")),
        FuzzSeed.Of("quoted.csv", "\"Frequency, Hz\",\"A,1\"(REAL),\"Level \"\"peak\"\" (dBm)\"\n"
            + SeedRows.Of(25, 1e6, 1e5, "\"{0}\",\"{3:F3}\",\"{1:F3}\"")),
        FuzzSeed.Of("quoted-decimal-commas.csv",
            "\"Freq (MHz)\",\"Level (dBm)\"\n" + SeedRows.Of(25, 100, 1, "\"{0:F0},5\",\"-{3:F0},25\"")),
        FuzzSeed.Of("headerless.csv", SeedRows.Of(30, 20000, 500, "{0:E2}, {1:E2},  0.00E+00")),
        FuzzSeed.Of("level-first.csv", "Level (dBm),Frequency (Hz)\n" + SeedRows.Of(30, 5e8, 1e6, "{1:F4},{0}")),
        FuzzSeed.Of("numbered.csv", "No.,Frequency [GHz],Max [dBuV/m]\n" + SeedRows.Of(30, 1, 0.1, "{4},{0:F3},{3:F2},")),
        FuzzSeed.Of("unit-columns.csv", SeedRows.Of(30, 1000000, 5000, "{0},Hz,{1:F2}, dBm,")),
        FuzzSeed.Of("glued.txt", SeedRows.Of(30, 108695.65, 1000.5, "{0:F2}Hz,{1:e5}dBm")),
        FuzzSeed.Of("glued-mixed.csv", "9.758GHz;-71.3dBm\n9.760GHz;-70.9dBm\n1388.8MHZ;-70.1dBm\n12GHz;-70.0dBm\n"),
        FuzzSeed.Of("unit-row.csv", ",Trace 1,Trace 2\nHz,dBm,dBm\n" + SeedRows.Of(30, 5e8, 1e6, "{0:F3}, {1:E1}, {2:E1}")),
        FuzzSeed.Of("same-names.csv",
            "Freq(MHz),Trace(dBm),Trace(dBm),Phase (deg)\n" + SeedRows.Of(30, 800, 2, "{0},{1:F2},{2:F2},{3:F1}")),
        FuzzSeed.Of("pairs.csv", "Freq. [Hz],re S21,im S21\n" + SeedRows.Of(30, 1e9, 1e7, "{0:E6},{3:E4},{1:E4}")),
        FuzzSeed.Of("uncertainty.txt", "% f/GHz\t|S21|\tu(|S21|)\n" + SeedRows.Of(30, 8.2, 0.01, "{0:F3}\t.{4:D3}\t1.5e-06")),
        FuzzSeed.Of("volts.csv", "Frequency (Hz),Voltage (µV),Power (W)\n" + SeedRows.Of(30, 0, 1e5, "{0},{3:F4},1.5e-0{4:D2}")),
        FuzzSeed.Of("row-per-sweep.csv", "Sweep,Date,Time,ms,88.0,88.2,88.4,88.6,88.8,89.0\n"
            + SeedRows.Of(12, 1, 1, "{0},2024-03-05,10:11:12,.282,{1:F1},{2:F1},{1:F2},{2:F2},{1:F1},{2:F1}")),
        FuzzSeed.Of("segment-rows.csv", "2024-03-05, 10:11:12, 88000000, 88800000, 200000.00, 16, -71.1, -70.2, -70.9, -71.3, "
            + "-70.0\n2024-03-05, 10:11:12, 88800000, 89600000, 200000.00, 16, -69.1, -68.2, -70.5, -71.0, -70.0\n2024-03-05, "
            + "10:11:13, 88000000, 88800000, 200000.00, 16, -70.1, -70.3, -70.8, -71.2, -70.1\n2024-03-05, 10:11:13, 88800000, "
            + "89600000, 200000.00, 16, -69.0, -68.1, -70.2, -71.9, -70.3\n"),
        FuzzSeed.Of("thousands.csv", "Frequency (Hz);Level (dBm)\n30.000.000;-70,1\n30.100.000;-70,2\n31.000.000;-70,3\n"),
    ];
}
