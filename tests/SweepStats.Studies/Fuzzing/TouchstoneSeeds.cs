namespace SweepStats.Studies.Fuzzing;

/// <summary>Touchstone files of both versions.</summary>
internal static class TouchstoneSeeds
{
    private const string Polar = "{0:F6} {2,8:F2}";
    private const string Cartesian = "{0:E8}  -{0:E7}";
    private const string LogPolar = "{1:F4}\t{2:F3}";

    public static IEnumerable<FuzzSeed> All =>
    [
        FuzzSeed.Of("one-port.s1p", "! reflection\n# MHz S MA R 50\n" + SeedRows.Points(20, 1, 1, Polar)),
        FuzzSeed.Of("two-port.s2p",
            "! VAR temperature=21\n!freq S11 S21 S12 S22\n#\tkhz  s\tdb   r 75\n" + SeedRows.Points(20, 4, 4, LogPolar)),
        FuzzSeed.Of("two-port-ri.S2P", "  # R 50 GHz S RI ! late words\n" + SeedRows.Points(20, 4, 4, Cartesian)),
        FuzzSeed.Of("bare-options.s2p",
            "#\n" + SeedRows.Points(15, 4, 4, Polar).Replace("\n", " ! remark\n", StringComparison.Ordinal)),
        FuzzSeed.Of("three-port.s3p", "# HZ S RI R 19.545\n" + SeedRows.Points(12, 9, 3, Cartesian)),
        FuzzSeed.Of("four-port.S4P", "!4 ports\n# GHz S DB R 50\n" + SeedRows.Points(8, 16, 4, LogPolar)),
        FuzzSeed.Of("noise.s2p", "# MHz S MA R 50\n" + SeedRows.Points(10, 4, 4, Polar)
            + "! noise\n 100  .64  .69 19 .38\n 200  .70  .60 28 .36\n 300  .78  .55 40 .33\n"),
        FuzzSeed.Of("impedances.s2p", "# MHz Z RI R 50\n" + SeedRows.Points(10, 4, 4, Cartesian)),
        FuzzSeed.Of("zeros.s2p",
            "# Hz S RI R 50\n" + SeedRows.Points(10, 2, 2, Cartesian).Replace("\n", " 0 0 0 0\n", StringComparison.Ordinal)),
        FuzzSeed.Of("two-full.s2p", Two(2, "[Two-Port Data Order] 21_12\n", 10, "Full") + "[Network Data]\n"
            + SeedRows.Points(10, 4, 4, LogPolar) + "[End]\n"),
        FuzzSeed.Of("two-noise.s2p", Two(2, "[Two-Port Data Order] 12_21\n[Number of Noise Frequencies] 2\n", 6, "Full")
            + "[Network Data]\n" + SeedRows.Points(6, 4, 4, LogPolar)
            + "[Noise Data]\n 100 .64 .69 19 .38\n 200 .70 .60 28 .36\n[End]\n"),
        FuzzSeed.Of("two-lower.s3p", Two(3, "[Begin Information]\nmade=by hand\n[End Information]\n", 8, "Lower")
            + "[Network Data]\n" + SeedRows.Points(8, 6, 3, LogPolar) + "[End]\n"),
        FuzzSeed.Of("two-mixed.s3p", Two(3, "[Mixed-Mode Order] D2,3 C2,3 S1\n", 8, "Lower") + "[Network Data]\n"
            + SeedRows.Points(8, 6, 3, LogPolar) + "[End]\n"),
        FuzzSeed.Of("two-upper.s4p",
            Two(4, "", 6, "Upper") + "[Network Data]\n" + SeedRows.Points(6, 10, 4, LogPolar) + "[End]\n"),
    ];

    private static string Two(int ports, string more, int points, string matrix) =>
        FormattableString.Invariant(
            $"! second version\n[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] {ports}\n{more}[Number of Frequencies] ")
            + FormattableString.Invariant(
                $"{points}\n[Reference]\n{string.Join(' ', Enumerable.Repeat("50", ports))}\n[Matrix Format] {matrix}\n");
}
