namespace SweepStats.Files.Traces.Text;

/// <summary>How the fields of a delimited file are parted, and its decimal mark.</summary>
/// <param name="Mark">Comma, semicolon, tab, or blank for runs of blanks and tabs.</param>
/// <param name="DecimalMark">Point or comma.</param>
internal readonly record struct Separator(byte Mark, byte DecimalMark);
