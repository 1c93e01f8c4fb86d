namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// What the lines above the data state in numbers. Where two lines differ, or one can be read in two ways, neither counts, and it
/// is said.
/// </summary>
internal sealed class StatedNumbers
{
    private readonly Dictionary<Setting, List<Statement>> _stated = [];

    /// <summary>Whether the numbers of the file have decimal commas, so that "100.000" may be a hundred thousand.</summary>
    public bool BesideDecimalCommas { get; set; }

    /// <summary>Takes a statement. One that holds no number, such as "RBW: auto" or "VBW: off", states none.</summary>
    /// <param name="setting">What it is of.</param>
    /// <param name="statement">The statement, with the unit that its key carries.</param>
    public void Take(Setting setting, Statement statement)
    {
        Statement bare = statement with { Values = Bare(statement) };
        if (bare.Values.IsEmpty || IsChance(setting, bare))
        {
            return;
        }

        if (!_stated.TryGetValue(setting, out List<Statement>? statements))
        {
            _stated.Add(setting, statements = []);
        }

        statements.Add(bare);
    }

    /// <summary>Whether a setting is a number.</summary>
    public static bool Holds(Setting setting) =>
        setting is Setting.ResolutionBandwidth or Setting.VideoBandwidth or Setting.Attenuation
        or Setting.ReferenceLevel or Setting.AverageCount or Setting.SweepTime or Setting.SourcePower;

    /// <summary>Whether a statement begins with a number and is not plainly one.</summary>
    public static bool IsUnplain(Statement statement) => Bare(statement) is [var only] && StatedNumber.Parse(only) is null;

    /// <summary>
    /// The number that is stated for a trace in the unit of the setting; null where none is, or none for certain.
    /// </summary>
    /// <param name="setting">What is asked for.</param>
    /// <param name="trace">Place of the trace from 0.</param>
    /// <param name="traces">Number of traces in the file.</param>
    /// <param name="bare">The unit of bandwidths without one; null where that is not known.</param>
    public double? Of(Setting setting, int trace, int traces, FrequencyUnit? bare)
    {
        if (!_stated.TryGetValue(setting, out List<Statement>? statements))
        {
            return null;
        }

        double? OfTrace(Statement statement) => In(setting, statement, trace, traces, bare);
        double? Alone(Statement statement) => In(setting, statement, 0, 1, bare);
        if (statements is [var single])
        {
            return single.Number is null || single.Number == trace + 1 ? OfTrace(single) : traces == 1 ? Alone(single) : null;
        }

        double?[] own = [.. statements.Where(s => s.Number == trace + 1).Select(OfTrace).Distinct()];
        double?[] shared = [.. statements.Where(s => s.Number is null).Select(OfTrace).Distinct()];
        double?[] only = traces == 1 && own.Length == 0
            ? [.. statements.Where(s => s.Number is not null).Select(Alone).Distinct()] : [];
        double?[] counts = own.Length > 0 ? own : shared.Length > 0 ? shared : only;
        return counts is [var one] ? one : null;
    }

    /// <summary>The number and unit as stated, where all statements are alike.</summary>
    public StatedNumber? Of(Setting setting) =>
        _stated.TryGetValue(setting, out List<Statement>? statements)
        ? statements is [var single] ? One(single.Values)
        : statements.Select(s => One(s.Values)).Distinct().ToArray() is [{ } only] ? only : null
        : null;

    /// <summary>A sentence for each number that is stated and was not used, or not as it stands.</summary>
    public IEnumerable<string> Remarks(FrequencyUnit? bare)
    {
        foreach ((Setting setting, List<Statement> statements) in _stated.OrderBy(s => s.Key))
        {
            if (Remark(setting, statements, bare) is { } remark)
            {
                yield return remark;
            }
        }
    }

    // A word that may mean other things is a setting only with a number that has the unit of one.
    private bool IsChance(Setting setting, Statement bare) =>
        setting is not (Setting.AverageCount or Setting.Points or Setting.Start or Setting.Stop or Setting.Bandwidth
            or Setting.First or Setting.Count) && !SettingKeys.IsPlain(bare.Key)
        && (In(setting, bare, 0, 1, null) is null || One(bare.Values) is { Unit: "" });

    private string? Remark(Setting setting, List<Statement> statements, FrequencyUnit? bare) =>
        setting == Setting.Bandwidth ? OfBandwidth(statements[0])
        : SettingName(setting) is { } name
            ? Unread(name, statements.FirstOrDefault(s => s.Values.Length == 1 && In(setting, s, 0, 1, bare) is null))
                ?? Differing(name, statements, s => In(setting, s, 0, 1, bare))
                ?? (setting == Setting.SweepTime ? TakenForSeconds(statements) : null)
        : null;

    private string? OfBandwidth(Statement first) =>
        _stated.ContainsKey(Setting.ResolutionBandwidth) || One(first.Values)?.Hertz() is null ? null
            : FormattableString.Invariant($"the bandwidth in line {first.Line}, '{first.Values[0]}', may be the RBW or another ")
                + "one and was not used";

    private string? Unread(string name, Statement? unread)
    {
        if (unread is null)
        {
            return null;
        }

        string why = StatedNumber.Parse(unread.Values[0]) switch
        {
            { } number when BesideDecimalCommas && IsGrouped(number.Digits) =>
                "has a point that may part thousands or decimals,",
            { Unit: "" } => "has no unit",
            { Unit: var unit } => $"is in '{unit}'",
            _ => "is not plainly one number with its unit",
        };
        return FormattableString.Invariant($"the {name} in line {unread.Line}, '{unread.Values[0]}', {why} and was not used");
    }

    private static string? Differing(string name, List<Statement> statements, Func<Statement, double?> number)
    {
        Statement[] shared = [.. statements.Where(s => s.Number is null && s.Values.Length == 1)];
        Statement? other = shared.FirstOrDefault(s => number(s) != number(shared[0]));
        return other is null ? null : FormattableString.Invariant(
            $"lines {shared[0].Line} and {other.Line} state the {name} differently; neither was used");
    }

    private static string? TakenForSeconds(List<Statement> statements) =>
        statements.FirstOrDefault(s => One(s.Values) is { Unit: "" }) is not { } seconds ? null
            : FormattableString.Invariant($"the sweep time in line {seconds.Line}, '{seconds.Values[0]}', has no unit and was ")
                + "taken for seconds: the frequencies are in Hz and no unit stands behind any setting";

    // Those that a person would miss.
    private static string? SettingName(Setting setting) => setting switch
    {
        Setting.ResolutionBandwidth => "RBW",
        Setting.VideoBandwidth => "VBW",
        Setting.Attenuation => "attenuation",
        Setting.ReferenceLevel => "reference level",
        Setting.SweepTime => "sweep time",
        _ => null,
    };

    private double? In(Setting setting, Statement statement, int trace, int traces, FrequencyUnit? bare)
    {
        StatedNumber? stated = statement.Values.Length == traces && traces > 1 ? StatedNumber.Parse(statement.Values[trace])
            : One(statement.Values);
        return stated is { } number && !(BesideDecimalCommas && IsGrouped(number.Digits)) ? In(setting, number, bare) : null;
    }

    // "100.000", not "0.100" and not "1000.125".
    private static bool IsGrouped(string digits) =>
        digits.IndexOf('.', StringComparison.Ordinal) is > 0 and <= 3 and var point && digits.Length == point + 4
            && digits[0] != '0';

    private static double? In(Setting setting, StatedNumber number, FrequencyUnit? bare) => setting switch
    {
        Setting.ResolutionBandwidth or Setting.VideoBandwidth => number.Hertz(bare) is > 0 and var hertz ? hertz : null,
        Setting.Attenuation =>
            number.Unit.Length == 0 || LevelUnits.Parse(number.Unit) == LevelUnit.Decibels ? number.Value() : null,
        Setting.ReferenceLevel => number.Unit.Length == 0 || LevelUnits.Parse(number.Unit) is not null ? number.Value() : null,
        Setting.SweepTime => number.Unit.Length == 0 && bare is not null ? number.Value() : number.Seconds(),
        Setting.SourcePower => LevelUnits.Parse(number.Unit) == LevelUnit.DecibelMilliwatts ? number.Value() : null,
        _ => number.Value(),
    };

    private static StatedNumber? One(ImmutableArray<string> values) =>
        values.All(v => v == values[0]) ? StatedNumber.Parse(values[0]) : null;

    private static bool StartsAsNumber(string value) =>
        value.AsSpan().TrimStart("+-.") is { Length: > 0 } digits && char.IsAsciiDigit(digits[0]);

    // Numbers with their units, which may stand in a field of their own or behind the key; without flags, remarks and shapes of
    // filters.
    private static ImmutableArray<string> Bare(Statement statement)
    {
        var bare = ImmutableArray.CreateBuilder<string>();
        ImmutableArray<string> values = statement.Values is [var unit, var number] && StartsAsNumber(number) && IsKnownUnit(unit)
            ? [number, unit] : statement.Values;
        foreach (string value in values.Select(SettingFlags.Without).Where(v => v.Length > 0 && !SettingFlags.IsNone(v)))
        {
            if (StartsAsNumber(value))
            {
                bare.Add(value);
            }
            else if (bare.Count > 0 && IsUnit(value) && StatedNumber.Parse(bare[^1]) is { Unit: "" })
            {
                bare[^1] += " " + value;
            }
            else if (bare.Count == 0)
            {
                return [];
            }
        }

        for (int i = 0; statement.KeyUnit.Length > 0 && i < bare.Count; i++)
        {
            bare[i] += StatedNumber.Parse(bare[i]) is { Unit: "" } ? " " + statement.KeyUnit : "";
        }

        return bare.ToImmutable();
    }

    // "RBW,kHz,9": the unit before the number.
    private static bool IsKnownUnit(string word) =>
        word is "s" or "ms" or "us" or "µs" || FrequencyUnits.Parse(word) is not null || LevelUnits.Parse(word) is not null;

    private static bool IsUnit(string value) => value.All(c => char.IsLetter(c) || c is '/' or '%');
}
