using SweepStats.Report;

namespace SweepStats.Cli;

/// <summary>The report that a run is asked for.</summary>
/// <param name="Target">Its folder.</param>
/// <param name="Shown">What page and charts show.</param>
/// <param name="Workbook">Whether the tables are also wanted as one spreadsheet.</param>
/// <param name="Printer">What prints the page; null where no PDF is wanted.</param>
internal sealed record RunReport(string Target, ReportOptions Shown, bool Workbook, PrintingBrowser? Printer);
