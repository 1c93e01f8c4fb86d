namespace SweepStats.Files.Campaigns.Settings;

/// <summary>[[files]]: columns and units that files do not say.</summary>
/// <remarks>Its keys bear on each other: <see cref="FilesSection"/>.</remarks>
internal static class FilesSettings
{
    public static SettingsSection Section { get; } = new("files")
    {
        IsRepeated = true,
        Heading = """
        ## Which columns and units some files have, where they do not say it; one block each, the first whose pattern
        ## matches a file holds for it.
        ## * stands for characters within a name, ** for folders. Columns go by their header or by their number from 1.
        ## In place of level_columns may stand real_column and imaginary_column: the level is the magnitude of a complex ratio.
        # [[files]]
        """,
        Settings =
        [
            new("match", "# match = \"covered/**/*.txt\""),
            new("frequency_unit", "# frequency_unit = \"MHz\"") { Turn = 1 },
            new("level_unit", "# level_unit = \"dBm\"         # or \"linear\": the magnitude of a ratio") { Turn = 1 },
            new("frequency_column", "# frequency_column = \"1\""),
            new("level_column"), new("level_columns", "# level_columns = [\"3\"]"),
            new("phase_column", """
        # phase_column = "4"         # of the one level; phase_unit = "deg" or "rad" where its header does not say
        """),
            new("phase_unit"), new("real_column"), new("imaginary_column"),
        ],
        Together = FilesSection.Read,
    };
}
