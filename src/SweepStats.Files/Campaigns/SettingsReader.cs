using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using SweepStats.Files.Traces.Text;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Tomlyn.Syntax;

namespace SweepStats.Files.Campaigns;

/// <summary>
/// Reads campaign.toml into the analysis plan. Every key has the default of <see cref="AnalysisPlan"/>; every key that is none is
/// a fault.
/// </summary>
internal sealed class SettingsReader
{
    /// <summary>No frequency lies above.</summary>
    public const double HighestHertz = 1e15;

    private static readonly string[] Sections = ["setup", "floor", "reference", "band", "requirement", "uncertainty", "budget",
        "named_band", "lots", "choice", "field", "files", "report"];

    // Each is held against every frequency; a budget of a bench has ten.
    private const int MostUncertainties = 100;

    private static readonly string[] Repeated = ["uncertainty", "named_band", "files"];

    private readonly FaultList _faults = new(CampaignFolder.SettingsName);
    private readonly string _root;
    private CampaignSettings _settings = new();
    private AnalysisPlan _plan = new();

    private SettingsReader(string root) => _root = root;

    public static CampaignSettings Read(string root)
    {
        string path = Path.Combine(root, CampaignFolder.SettingsName);
        if (OwnFile.Refusal(root, CampaignFolder.SettingsName) is { } refusal)
        {
            return new CampaignSettings { Faults = [refusal] };
        }

        if (!File.Exists(path))
        {
            return new CampaignSettings
            {
                Assumptions =
                [$"there is no {CampaignFolder.SettingsName}; every setting has its default"],
            };
        }

        if (new FileInfo(path) is { Length: 0, LinkTarget: null })
        {
            string nothing = Convert.ToHexStringLower(SHA256.HashData([]));
            return new CampaignSettings
            {
                Inputs = [new InputFile(CampaignFolder.SettingsName, nothing)],
                Assumptions = [$"{CampaignFolder.SettingsName} is empty; every setting has its default"],
            };
        }

        var reader = new SettingsReader(root);
        return FileBytes.Read(path, reader._faults) is { } bytes ? reader.Read(bytes)
            : new CampaignSettings { Faults = reader._faults.All };
    }

    private CampaignSettings Read(FileBytes bytes)
    {
        string text = Encoding.UTF8.GetString(bytes.Buffer.AsSpan(bytes.Start, bytes.End - bytes.Start));
        System.Buffers.ArrayPool<byte>.Shared.Return(bytes.Buffer);
        _settings = _settings with { Inputs = [new InputFile(CampaignFolder.SettingsName, bytes.Sha256)] };
        if (SettingsDocument.Of(text, _faults) is { } document)
        {
            Top(new KeyReader("", 1, document.KeyValues, _faults));
            ReadTables(document);
        }

        return _settings with
        {
            Plan = _plan,
            Faults = [.. _faults.All.OrderBy(f => f.File == CampaignFolder.SettingsName ? f.Line : int.MaxValue)],
        };
    }

    private void ReadTables(DocumentSyntax document)
    {
        HashSet<string> seen = [];
        foreach (TableSyntaxBase table in document.Tables)
        {
            string name = KeyReader.NameOf(table.Name);
            var keys = new KeyReader(name, KeyReader.LineOf(table), table.Items, _faults);
            if (!Sections.Contains(name))
            {
                _faults.Add(keys.Line, $"there is no section [{name}]{Spelling.Hint(name, Sections)}",
                    $"use {string.Join(", ", Sections)}");
            }
            else if (Repeated.Contains(name) != table is TableArraySyntax)
            {
                _faults.Add(keys.Line, $"the heading of '{name}' has the wrong brackets",
                    Repeated.Contains(name) ? $"write [[{name}]], once for each entry" : $"write [{name}]");
            }
            else if (!Repeated.Contains(name) && !seen.Add(name))
            {
                _faults.Add(keys.Line, $"the section [{name}] is there twice", "join both");
            }
            else
            {
                Section(name, keys);
            }
        }
    }

    private void Section(string name, KeyReader keys)
    {
        Action<KeyReader> read = name switch
        {
            "setup" => Setup,
            "floor" => Floor,
            "reference" => Reference,
            "band" => Band,
            "requirement" => Requirement,
            "uncertainty" => Uncertainty,
            "budget" => Budget,
            "named_band" => Named,
            "lots" => Lots,
            "choice" => Choice,
            "files" => Files,
            "report" => Report,
            _ => Field,
        };
        read(keys);
        keys.RefuseOthers();
    }

    private void Top(KeyReader keys)
    {
        _settings = _settings with { Title = keys.Text("title") };
        _plan = _plan with
        {
            Averaging = AveragingOf(keys) ?? Averaging.Unknown,
            Confidence = keys.Number("confidence", 0.5, 0.9999) is { } level ? new Confidence(level) : Confidence.NinetyFive,
        };
        _settings = _settings with { Rehearsed = keys.Truth("rehearsed") == true };
        keys.RefuseOthers();
    }

    // Receivers' menus have other words for it, and the nearest in spelling is not always the one that is meant.
    private static Averaging? AveragingOf(KeyReader keys)
    {
        if (keys.Written("averaging") is { } word && AveragingWords.Remedy(word) is { } remedy)
        {
            keys.Refuse("averaging", $"averaging is '{word}', not one of power, log, sample, peak and lowest", remedy);
            return null;
        }

        return keys.Choice<Averaging>(
            "averaging",
            new("power", Averaging.Power), new("log", Averaging.Log), new("sample", Averaging.Sample),
            new("peak", Averaging.Peak), new("lowest", Averaging.Lowest));
    }

    private void Setup(KeyReader keys)
    {
        _plan = _plan with
        {
            Setup = new ReceiverSettings
            {
                ResolutionBandwidthHz = keys.Number("rbw_hz", 1e-3, 1e12),
                AttenuationDb = keys.Number("attenuation_db", 0, 200),
            },
            SourceDbm = keys.Number("source_dbm", -200, 100),
            MaximumInputDbm = keys.Number("max_input_dbm", -200, 100),
            SameLeakage = keys.Choice<bool>("leakage", new("same", true), new("unknown", false)) ?? false,
        };
        _settings = _settings with
        {
            ImpedanceOhm = keys.Number("impedance_ohm", 0.1, 1e4),
            FrequencyUnit = SettingsUnits.OfFrequency(keys),
            LevelUnit = SettingsUnits.OfLevel(keys, "setup"),
            ShieldNothing = [.. (keys.Texts("shields_nothing") ?? []).Select(t => new StatedSpecimen(t.Text, t.Line))],
        };
    }

    private void Floor(KeyReader keys)
    {
        _plan = _plan with
        {
            DeclaredFloorDb = keys.Number("declared_dbm", -300, 100),
            FloorTaking = Taking(keys),
            FloorStabilityDb = keys.Number("stability_db", 0, 20),
        };
        if (!keys.Has("taken") && !keys.Has("stability_db") && !keys.Has("declared_dbm"))
        {
            keys.Refuse(keys.Line, "section [floor] says nothing", "add taken or stability_db, or remove it");
        }
    }

    private void Reference(KeyReader keys)
    {
        _plan = _plan with { ReferenceTaking = Taking(keys) };
        keys.Require("taken");
    }

    private static SweepTaking Taking(KeyReader keys) =>
        keys.Choice<SweepTaking>(
            "taken", new("once", SweepTaking.Once), new("before-and-after", SweepTaking.BeforeAndAfter)) ?? SweepTaking.Unstated;

    private void Band(KeyReader keys)
    {
        double? start = keys.Number("start_hz", 0, HighestHertz);
        double? stop = keys.Number("stop_hz", 0, HighestHertz);
        _plan = _plan with { Interpolate = keys.Truth("interpolate") == true };
        if (start > stop)
        {
            keys.Refuse("stop_hz", FormattableString.Invariant($"the band ends at {stop:R} Hz, below its start at {start:R} Hz"),
                SharedBand.Reversed);
            return;
        }

        if (start is not null || stop is not null)
        {
            _plan = _plan with { Band = new FrequencyBand(new Hertz(start ?? 0), new Hertz(stop ?? HighestHertz)) };
        }
    }

    private void Requirement(KeyReader keys)
    {
        var section = new RequirementSection(_root, _faults);
        section.Read(keys);
        _plan = _plan with
        {
            Requirement = section.Requirement,
            RequirementConfidence = section.Level,
            GuardBand = section.GuardBand ?? _plan.GuardBand,
            Margin = section.Margin ?? _plan.Margin,
        };
        _settings = _settings with { RequirementAt = section.StatedAt };
        _settings = section.Input is { } input ? _settings with { Inputs = _settings.Inputs.Add(input) } : _settings;
    }

    private void Uncertainty(KeyReader keys)
    {
        if (UncertaintySection.Read(keys) is not { } entry)
        {
            return;
        }

        if (_plan.Uncertainties.Any(e => string.Equals(e.Name, entry.Name, StringComparison.OrdinalIgnoreCase)))
        {
            keys.Refuse("name", $"there is another error of the name '{entry.Name}'", "join both, or give each its own name");
        }

        if (_plan.Uncertainties.Length == MostUncertainties)
        {
            keys.Refuse(keys.Line, FormattableString.Invariant($"there are more than {MostUncertainties} errors"),
                "join those that act alike");
        }

        if (_plan.Uncertainties.Length <= MostUncertainties)
        {
            _plan = _plan with { Uncertainties = _plan.Uncertainties.Add(entry) };
        }

        if (!keys.Has("acts_on"))
        {
            _settings = _settings with
            {
                Assumptions = _settings.Assumptions.Add(
                    $"the error '{entry.Name}' is taken to act on the covered levels alone, since acts_on is left out"),
            };
        }
    }

    private void Budget(KeyReader keys)
    {
        var section = new BudgetSection();
        section.Read(keys);
        _plan = _plan with { BudgetFrequencies = [.. section.Frequencies.Select(f => f.At)] };
        _settings = _settings with { BudgetFrequencies = section.Frequencies };
    }

    private void Named(KeyReader keys)
    {
        if (NamedBandSection.Read(keys, _plan.NamedBands) is { } named)
        {
            _plan = _plan with { NamedBands = _plan.NamedBands.Add(named) };
            _settings = _settings with { NamedBands = _settings.NamedBands.Add((named, keys.Line)) };
        }
    }

    private void Files(KeyReader keys)
    {
        if (FilesSection.Read(keys) is { } statement)
        {
            _settings = _settings with { Files = _settings.Files.Add(statement) };
        }
    }

    private void Report(KeyReader keys) => _settings = _settings with { Identity = ReportSection.Read(keys) };

    private void Lots(KeyReader keys)
    {
        var section = new LotsSection(keys, _plan.Lots);
        _plan = _plan with { Lots = section.Question };
        _settings = _settings with { OrderedBy = section.OrderedBy };
    }

    private void Choice(KeyReader keys)
    {
        var section = new ChoiceSection(keys);
        _plan = _plan with { Choice = section.Question };
        _settings = _settings with { PropertyColumns = section.Columns, Yardstick = section.Yardstick };
    }

    private void Field(KeyReader keys)
    {
        var section = new FieldSection(keys);
        _plan = _plan with { Field = section.Threat, Pulse = section.Pulse };
    }
}
