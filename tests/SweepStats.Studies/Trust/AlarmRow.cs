using SweepStats.StudyRuns.Trust;

namespace SweepStats.Studies.Trust;

/// <summary>How often a check spoke up in one cell of clean campaigns.</summary>
internal sealed record AlarmRow(CleanCell Cell, string Code, int Campaigns, int Warned, int Noted)
{
    /// <summary>In place of a code: a warning or fault of any check.</summary>
    public const string Any = "any";
}
