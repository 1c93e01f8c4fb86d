namespace SweepStats.Files.Traces.Tables;

/// <summary>Says of a column that is called a correction why it is no level, and what to do if it is one all the same.</summary>
internal static class CorrectionDoubt
{
    /// <summary>The doubt.</summary>
    /// <param name="file">The file.</param>
    /// <param name="name">The column, which is a correction.</param>
    /// <param name="label">Its name in messages.</param>
    public static ReadFault Of(string file, ColumnName name, string label) =>
        name.IsAttenuation ? new ReadFault(file, null, $"column {label} is an attenuation, which rises where the level falls",
            "export S21 or the level in its place; leave a correction out of the campaign")
        : name.IsGain ? new ReadFault(
            file, null, $"column {label} is a gain: a correction, or a transmission that was measured",
            "if it is a measured transmission, name the column in sweeps.csv (column = its header or its number); leave a "
                + "correction out of the campaign")
        : new ReadFault(
            file, null, $"column {label} is a correction (a loss, a factor or a shielding), not the level of a sweep",
            "correct the levels before exporting them, or leave corrections that floor, reference and covered share out of the "
                + "campaign");
}
