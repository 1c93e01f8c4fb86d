using SweepStats.Files.Traces.Text;
using SweepStats.Quantities;
using SweepStats.Receivers;

namespace SweepStats.Files.Receivers;

/// <summary>One row of a file of observations.</summary>
internal sealed class ReceiverRow(ReceiverColumns columns, CsvRow row, FaultList faults)
{
    // No receiver, source or place lies beyond; a typing error does.
    private static readonly Allowed Frequencies = new(
        ReceiverObservation.Frequencies.Start.Value, ReceiverObservation.Frequencies.Stop.Value, "Hz")
    {
        Remedy = "write the frequency in hertz, from 1e3 to 1e12: 145 MHz is 145e6",
    };

    private static readonly Allowed Levels = new(-250, 100, "dBm"),
        Uncertainties = new(0, 40, "dB"), Fields = new(-100, 250, "dBµV/m"), Factors = new(-60, 120, "dB/m"),
        Gains = new(-100, 120, "dB"), Distances = new(0.001, 1e9, "m");

    private bool _refused;

    /// <summary>The observation; null after telling what is wrong.</summary>
    public ReceiverObservation? Read()
    {
        string name = Text(ReceiverColumns.Name);
        if (name.Length == 0)
        {
            Refuse("the row has no name", "name the station");
        }

        double? frequency = Number(ReceiverColumns.Frequency, Frequencies),
            levelError = Number(ReceiverColumns.LevelUncertainty, Uncertainties);
        double? sensitivity = Number(ReceiverColumns.Sensitivity, Levels),
            sensitivityError = Number(ReceiverColumns.SensitivityUncertainty, Uncertainties);
        Answer uncovered = YesOrNo(ReceiverColumns.Uncovered), covered = YesOrNo(ReceiverColumns.Covered);
        if (covered == Answer.None)
        {
            Refuse($"{ReceiverColumns.Covered} is empty", "write yes or no: was it heard under the cover?");
        }

        ReceivedLevel? level = frequency is { } f && levelError is { } u ? Level(new Hertz(f), u) : null;
        return level is null || sensitivity is null || sensitivityError is null || _refused ? null : new ReceiverObservation
        {
            Name = name,
            Frequency = new Hertz(frequency!.Value),
            Level = level.Value,
            SensitivityDbm = sensitivity.Value,
            SensitivityUncertaintyDb = sensitivityError.Value,
            HeardUncovered = uncovered == Answer.None ? null : uncovered == Answer.Yes,
            HeardCovered = covered == Answer.Yes,
            Receiver = Named(ReceiverColumns.Receiver),
            Source = Named(ReceiverColumns.Source),
        };
    }

    // One way to the level, whole: of two the program would have to choose one.
    private ReceivedLevel? Level(Hertz frequency, double uncertainty)
    {
        bool level = Has(ReceiverColumns.Level), field = Has(ReceiverColumns.Field, ReceiverColumns.AntennaFactor);
        bool reckoned = Has(ReceiverColumns.Power, ReceiverColumns.Gain, ReceiverColumns.Distance);
        switch (level, field, reckoned)
        {
            case (true, false, false):
                return Number(ReceiverColumns.Level, Levels) is { } dbm ? new ReceivedLevel(dbm, uncertainty, LevelOrigin.Level)
                    : null;
            case (false, true, false):
                double? e = Number(ReceiverColumns.Field, Fields), factor = Number(ReceiverColumns.AntennaFactor, Factors);
                return e is null || factor is null ? null : ReceivedLevel.FromField(e.Value, factor.Value, uncertainty);
            case (false, false, true):
                return InFreeSpace(frequency, uncertainty);
            default:
                Refuse(level || field || reckoned ? "the level is stated in two ways" : "the level is not stated", Ways);
                return null;
        }
    }

    private ReceivedLevel? InFreeSpace(Hertz frequency, double uncertainty)
    {
        double? power = Number(ReceiverColumns.Power, Levels), gain = Number(ReceiverColumns.Gain, Gains),
            distance = Number(ReceiverColumns.Distance, Distances);
        if (distance * frequency.Value < ReceivedLevel.SpeedOfLight)
        {
            Refuse(FormattableString.Invariant($"{distance} m is nearer than a wavelength, where no free-space loss holds"),
                Measure);
        }

        if (uncertainty < ReceivedLevel.LeastFreeSpaceUncertaintyDb)
        {
            string least = FormattableString.Invariant($"{ReceivedLevel.LeastFreeSpaceUncertaintyDb} dB");
            Refuse($"{ReceiverColumns.LevelUncertainty} is below {least}, but a level reckoned by distance is no surer",
                $"write {least} or more, or {Measure}");
        }

        return power is null || gain is null || distance is null || _refused ? null
            : ReceivedLevel.InFreeSpace(power.Value, gain.Value, distance.Value, frequency, uncertainty);
    }

    private const string Measure = $"measure the level and write it into {ReceiverColumns.Level}";

    private const string Ways =
        $"fill in {ReceiverColumns.Level}; or {ReceiverColumns.Field} and {ReceiverColumns.AntennaFactor}; or "
            + $"{ReceiverColumns.Power}, {ReceiverColumns.Gain} and {ReceiverColumns.Distance}";

    private bool Has(params IEnumerable<string> names) => names.Any(n => Text(n).Length > 0);

    private string Text(string column) => columns.Cell(row.Fields, column);

    private string? Named(string column) => Text(column) is { Length: > 0 } name ? name : null;

    private double? Number(string column, Allowed allowed)
    {
        string text = Text(column);
        if (!StrictNumber.TryParse(System.Text.Encoding.UTF8.GetBytes(text), (byte)'.', 0, out double value))
        {
            Refuse(text.Length == 0 ? $"{column} is empty"
                : $"{column} is '{text}', which is no number", $"write a number in {allowed.Unit}, with a decimal point");
            return null;
        }

        if (value < allowed.Least || value > allowed.Most)
        {
            Refuse(FormattableString.Invariant($"{column} is {value:R} {allowed.Unit}"),
                allowed.Remedy
                    ?? FormattableString.Invariant($"write a number from {allowed.Least} to {allowed.Most} {allowed.Unit}"));
            return null;
        }

        return value;
    }

    private Answer YesOrNo(string column)
    {
        switch (Text(column).ToLowerInvariant())
        {
            case "":
                return Answer.None;
            case "yes" or "true" or "1":
                return Answer.Yes;
            case "no" or "false" or "0":
                return Answer.No;
            default:
                Refuse($"{column} is '{Text(column)}'", "write yes or no");
                return Answer.Unclear;
        }
    }

    private void Refuse(string problem, string remedy)
    {
        _refused = true;
        faults.Add(row.Line, problem, remedy);
    }

    private enum Answer
    {
        None,
        Yes,
        No,
        Unclear,
    }

    private sealed record Allowed(double Least, double Most, string Unit)
    {
        /// <summary>What to write instead; null where the range alone says it.</summary>
        public string? Remedy { get; init; }
    }
}

/// <summary>A row with its line.</summary>
/// <param name="Line">Line in the file, from 1.</param>
/// <param name="Fields">Its cells.</param>
internal readonly record struct CsvRow(int Line, ImmutableArray<string> Fields);
