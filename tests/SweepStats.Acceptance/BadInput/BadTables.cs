namespace SweepStats.Acceptance.BadInput;

/// <summary>Trace files in delimited text that must be refused.</summary>
internal static class BadTables
{
    private const string Head = "frequency_hz,level_dbm\n";

    private static string Rows(string filled) => string.Concat(Enumerable.Range(1, 6).Select(i => $"{i}000,{filled}\n"));

    public static IEnumerable<BadInput> All =>
    [
        BadInput.Floor("an empty file", ""),
        BadInput.Floor("a text without numbers", "hello\nworld\n"),
        BadInput.Floor("a header and nothing below", Head),
        BadInput.Floor("a single row without names", "1000,-50\n"),
        BadInput.Floor("a NaN", Head + "1000,-50\n2000,NaN\n3000,-51\n4000,-52\n"),
        BadInput.Floor("an infinity", Head + "1000,-50\n2000,-51\n3000,-Infinity\n"),
        BadInput.Floor("a number too large for a double", Head + "1000,-50\n2000,-51\n3000,1e400\n"),
        BadInput.Floor("a negative frequency", Head + "-1000,-50\n1000,-51\n"),
        BadInput.Floor("a repeated frequency", Head + "1000,-50\n1000,-51\n2000,-52\n"),
        BadInput.Floor("a falling frequency", Head + "1000,-50\n3000,-51\n2000,-52\n"),
        BadInput.Floor("a sweep up and down", Head + "1000,-50\n2000,-51\n3000,-52\n2000,-51\n"),
        BadInput.Floor("columns of reference and covered", "frequency_hz;Reference (dBm);Covered (dBm)\n1000;-50;-80\n2000;-51;-81\n"),
        BadInput.Floor("rows of two detectors", "frequency_hz;level_dbm;detector\n1000;-50;Peak\n1000;-60;RMS\n2000;-51;Peak\n2000;-61;RMS\n"),
        BadInput.Floor("a column of words and numbers", "frequency_hz;level_dbm;second\n1000;-50;low\n2000;-51;-60\n3000;-52;low\n"),
        BadInput.Floor("a row cut short", Head + "1000,-50\n2000,-51\n3000,\n4000,-52\n"),
        BadInput.Floor("a row with a field too many", Head + "1000,-50\n2000,-51\n3000,-52,7\n4000,-53\n"),
        BadInput.Floor("a remark amid the rows", Head + "1000,-50\n2000,-51\ndoor open\n3000,-52\n"),
        BadInput.Floor("seven bad rows", Head + "500,-50\n" + string.Concat(Enumerable.Range(1, 7).Select(i => $"{i}000,x\n"))),
        BadInput.Floor("thousands separators", "f_Hz;level_dBm\n998.000;-50\n999.000;-51\n1.000.000;-52\n1000000;-53\n"),
        BadInput.Floor("apostrophes between thousands", "f_Hz,level_dBm\n2'000,-50\n1'000,-51\n3'000,-51\n"),
        BadInput.Floor("decimal commas between commas", "f_MHz,level_dbm\n30,5,-50,2\n31,5,-51,3\n"),
        BadInput.Floor("commas that may part thousands", "f_MHz;level_V\n30,000;1,234\n31,000;1,345\n"),
        BadInput.Floor("a decimal comma among points", "f_MHz;level_dbm\n30.5;-50\n31.5;-51\n32,5;-52\n"),
        BadInput.Floor("a quote that is not closed", Head + "1000,-50\n2000,-51\n\"3000,-52\n"),
        BadInput.Floor("frequencies without unit", "frequency,level_dbm\n1000,-50\n2000,-51\n"),
        BadInput.Floor("levels without unit", "frequency_hz,level\n1000,-50\n2000,-51\n"),
        BadInput.Floor("a frequency in THz", "Frequency (THz),level_dbm\n1,-50\n2,-51\n"),
        BadInput.Floor("a level in dBµA/m", "frequency_hz,Level (dBµA/m)\n1000,50\n2000,51\n"),
        BadInput.Floor("a phase and no level", "frequency_hz,Phase (deg)\n1000,50\n2000,51\n"),
        BadInput.Floor("columns whose names say nothing", "frequency_hz,A,B\n1000,-50,-60\n2000,-51,-61\n"),
        BadInput.Floor("no column named as the frequency", "x,level_dbm\n1000,-50\n2000,-51\n"),
        BadInput.Floor("two columns of frequencies", "Start (Hz),Frequency (Hz),Level (dBm)\n1,2,-50\n2,3,-51\n"),
        BadInput.Floor("a power of zero watts", "frequency_hz,level_w\n1000,1e-9\n2000,0\n"),
        BadInput.Floor("a negative voltage", "frequency_hz,level_mv\n1000,-1\n2000,2\n"),
        BadInput.Floor("a trace that was never swept", Head + Rows("-2147.48")),
        BadInput.Floor("a trace of zeros", Head + Rows("0")),
        BadInput.Floor("a placeholder among levels", Head + "1000,-50\n2000,-893.01\n3000,-52\n"),
        BadInput.Floor("an antenna factor", "Frequency (MHz),Antenna Factor (dB/m)\n30,13\n300,15\n"),
        BadInput.Floor("a table of cable loss", "Frequency (MHz),Cable loss (dB)\n30,0.1\n300,0.5\n"),
        BadInput.Floor("rows in dBm and rows in dBµV", "30MHz,-50dBm\n31MHz,-51dBm\n32MHz,55dBµV\n33MHz,-53dBm\n"),
        BadInput.Floor("two tables over different frequencies", "Trace A\n" + Head + "1000,-50\n2000,-51\n3000,-52\n\nTrace B\n" + Head + "1500,-50\n2500,-51\n3500,-52\n"),
        BadInput.Floor("a file cut off", "Points,1001\nStop Frequency,30 MHz\n" + Head + "1000000,-50\n2000000,-51\n3000000,-5"),
        BadInput.Floor("a file cut off within its last number", Head + "1000,-60.25\n2000,-60.50\n3000,-60.75\n4000,-60.25\n5000,-6"),
        BadInput.Floor("a row a sweep, rows without names", "30000000,31000000,32000000,33000000,34000000\n-50,-51,-52,-53,-54\n"),
        BadInput.Floor("a row a sweep, frequencies without unit", "Sweep,88.0,88.2,88.4\n1,-50,-51,-52\n"),
        BadInput.Floor("a row a sweep, one short", "Sweep (dBm),88MHz,88.2MHz,88.4MHz\n1,-50,-51,-52\n2,-50,-51\n"),
        BadInput.Floor("segments whose range does not fit", "2026-03-05, 14:30:00, 1000, 1900, 100, 8, -1, -2, -3\n"),
        BadInput.Floor("a section without rows", "[Traces]\n[Trace]\nTrace 1,,dBm\nNumberPoints,3\n"),
    ];
}
