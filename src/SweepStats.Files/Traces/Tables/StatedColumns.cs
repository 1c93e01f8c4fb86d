using System.Globalization;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Columns that a person named. Such a statement settles what the reader would doubt; against what the file itself says of a
/// column beyond doubt, its unit, it
/// does not stand.
/// </summary>
internal sealed class StatedColumns(ImmutableArray<ColumnName> names, TraceReadOptions options, FaultList faults)
{
    /// <summary>Place of the frequency column from 0; null, with the reason among the faults, where it cannot be the one that is
    /// named.</summary>
    public int? Frequency()
    {
        if (Place("frequency_column", options.FrequencyColumn!) is not { } at)
        {
            return null;
        }

        ColumnName name = names[at];
        if (name.LevelUnit is { } unit)
        {
            Contradicted("frequency_column", at, $"which the file gives in {unit.Symbol()}");
            return null;
        }

        // A number of the row that is named as the frequency would be read in silence.
        if (name.Kind == ColumnKind.Other
            || (name.Kind != ColumnKind.Frequency && (name.Part != ComplexPart.None || name.IsLimit || name.IsCorrection)))
        {
            Contradicted("frequency_column", at, "whose name says another quantity");
            return null;
        }

        // Silence would hide a wrong number where the file names another column for it.
        int[] named = [.. Enumerable.Range(0, names.Length).Where(i => names[i].Kind == ColumnKind.Frequency)];
        if (named.Length > 0 && !named.Contains(at))
        {
            Contradicted("frequency_column", at, $"and the file names {ColumnList.Of(names, named)} as the frequency");
            return null;
        }

        faults.Assume($"column {ColumnList.Of(names, [at])} is the frequency, as {options.StatedIn} says");
        return at;
    }

    /// <summary>The level of the real and the imaginary part that are named; null, with the reason among the faults, where they
    /// cannot be them.</summary>
    /// <param name="frequency">Place of the frequency column from 0.</param>
    /// <param name="table">The rows.</param>
    public LevelColumn? Pair(int frequency, TableSight table)
    {
        if (Other("real_column", options.RealColumn!, frequency) is not { } real
            || Other("imaginary_column", options.ImaginaryColumn!, frequency) is not { } imaginary)
        {
            return null;
        }

        if (real == imaginary || !MayBe("real_column", real, ComplexPart.Real)
            || !MayBe("imaginary_column", imaginary, ComplexPart.Imaginary))
        {
            if (real == imaginary)
            {
                Contradicted("real_column", real, "as does imaginary_column");
            }

            return null;
        }

        faults.Assume($"the level is the magnitude of the complex number in columns {ColumnList.Of(names, [real, imaginary])}, "
            + $"as {options.StatedIn} says");
        string label = names[real].Base is { Length: > 0 } trace ? trace : ColumnList.Number(real);
        return new LevelColumn(real, label, LevelUnit.Decibels)
        {
            Imaginary = imaginary,
            Quantity = names[real].Parameter ?? "level",
            Asked = true,
            Phase = table.IsZero(imaginary) ? null : new PhaseColumn(real, imaginary, 1),
        };
    }

    /// <summary>A level with the phase that is named; null, with the reason among the faults, where it cannot be its
    /// phase.</summary>
    /// <param name="level">The level.</param>
    /// <param name="frequency">Place of the frequency column from 0.</param>
    public LevelColumn? WithPhase(LevelColumn level, int frequency)
    {
        if (Other("phase_column", options.PhaseColumn!, frequency) is not { } at || !MayBe("phase_column", at, ComplexPart.Phase))
        {
            return null;
        }

        if (at == level.Index || options.Columns.Length != 1)
        {
            Contradicted("phase_column", at,
                at == level.Index ? "which is named as the level" : "and several levels are asked for");
            return null;
        }

        double? told = options.PhaseUnit switch
        {
            PhaseUnit.Degrees => 1,
            PhaseUnit.Radians => Phase.DegreesPerRadian,
            _ => null
        };
        double? named = names[at].AsPhase.DegreesPerUnit;
        if ((named ?? told) is not { } degrees || (told ?? degrees) != degrees)
        {
            faults.Add(
                null, named is null ? $"the file does not say the unit of the phase in column {ColumnList.Of(names, [at])}"
                    : $"{options.StatedIn} states another phase_unit than the file does for column {ColumnList.Of(names, [at])}",
                named is null ? "say phase_unit (deg or rad) beside phase_column" : "correct phase_unit, or take it away");
            return null;
        }

        faults.Assume($"column {ColumnList.Of(names, [at])} is the phase of column {level.Name}, as {options.StatedIn} says");
        return level with { Phase = new PhaseColumn(at, null, degrees) };
    }

    private int? Other(string key, string wanted, int frequency)
    {
        int? at = Place(key, wanted);
        if (at == frequency)
        {
            Contradicted(key, frequency, "which is the frequency");
            return null;
        }

        return at;
    }

    // A name that tells nothing may be anything; one that tells another part, or a level in dB, is not this part.
    private bool MayBe(string key, int at, ComplexPart part)
    {
        ColumnName name = names[at];
        if (name.LevelUnit is null && !name.IsLimit && !name.IsCorrection && !name.IsLogMagnitude
            && (name.Part == ComplexPart.None || name.Part == part))
        {
            return true;
        }

        Contradicted(key, at, "whose name says another quantity");
        return false;
    }

    private int? Place(string key, string wanted)
    {
        int[] matches = [.. Enumerable.Range(0, names.Length)
            .Where(i => names[i].Text.Length > 0 && string.Equals(names[i].Text, wanted, StringComparison.OrdinalIgnoreCase))];
        bool isNumber = int.TryParse(wanted, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= 1
            && number <= names.Length;
        if (matches.Length == 0 && isNumber)
        {
            return number - 1;
        }

        if (matches is [var only] && (!isNumber || number - 1 == only))
        {
            return only;
        }

        string problem = matches.Length switch
        {
            0 => $"there is no column '{wanted}'",
            1 => $"'{wanted}' is the name of column {ColumnList.Number(matches[0])} and the number of column "
                + $"{ColumnList.Of(names, [number - 1])}",
            _ => $"more than one column is named '{wanted}'",
        };
        faults.Add(null, $"{problem} in {faults.File}; it has {ColumnList.Of(names, Enumerable.Range(0, names.Length))}",
            $"correct {key}: a header as listed here, or a number from 1");
        return null;
    }

    private void Contradicted(string key, int at, string why) => faults.Add(
        null, $"{options.StatedIn} states column {ColumnList.Of(names, [at])} as {key}, {why}",
        $"correct {key}, or take it away");
}
