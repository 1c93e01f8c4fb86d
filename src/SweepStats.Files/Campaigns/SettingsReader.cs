using System.Security.Cryptography;
using System.Text;
using SweepStats.Files.Campaigns.Settings;
using SweepStats.Files.Traces.Text;
using Tomlyn.Syntax;

namespace SweepStats.Files.Campaigns;

/// <summary>
/// Reads campaign.toml by the table of settings. Every key has the default of <see cref="AnalysisPlan"/>; every key that is none
/// is a fault.
/// </summary>
internal sealed class SettingsReader
{
    /// <summary>No frequency lies above.</summary>
    public const double HighestHertz = 1e15;

    private readonly FaultList _faults = new(CampaignFolder.SettingsName);
    private readonly string _root;
    private CampaignSettings _settings = new();

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
                Assumptions = [$"there is no {CampaignFolder.SettingsName}; every setting has its default"],
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
            SettingsSection top = SettingsTable.Sections[0];
            _settings = top.Read(new KeyReader(top, 1, document.KeyValues, _root, _faults), _settings);
            ReadTables(document);
        }

        return _settings with
        {
            Faults = [.. _faults.All.OrderBy(f => f.File == CampaignFolder.SettingsName ? f.Line : int.MaxValue)],
        };
    }

    private void ReadTables(DocumentSyntax document)
    {
        HashSet<string> seen = [];
        string[] names = [.. SettingsTable.Sections[1..].Select(s => s.Name)];
        foreach (TableSyntaxBase table in document.Tables)
        {
            string name = KeyReader.NameOf(table.Name);
            int line = KeyReader.LineOf(table);
            if (SettingsTable.Sections[1..].FirstOrDefault(s => s.Name == name) is not { } section)
            {
                _faults.Add(line, $"there is no section [{name}]{Spelling.Hint(name, names)}", $"use {string.Join(", ", names)}");
            }
            else if (section.IsRepeated != table is TableArraySyntax)
            {
                _faults.Add(line, $"the heading of '{name}' has the wrong brackets",
                    section.IsRepeated ? $"write [[{name}]], once for each entry" : $"write [{name}]");
            }
            else if (!section.IsRepeated && !seen.Add(name))
            {
                _faults.Add(line, $"the section [{name}] is there twice", "join both");
            }
            else
            {
                _settings = section.Read(new KeyReader(section, line, table.Items, _root, _faults), _settings);
            }
        }
    }
}
