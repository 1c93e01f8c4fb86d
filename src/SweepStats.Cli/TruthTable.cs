using System.Globalization;
using System.Text;
using SweepStats.Rehearsal;

namespace SweepStats.Cli;

/// <summary>truth.csv of a rehearsed campaign: lot,specimen,frequency_hz,se_db,noise_dbm.</summary>
internal static class TruthTable
{
    /// <summary>The table, a row a specimen and frequency: true shielding in dB and true noise in dBm, to four places.</summary>
    public static string Of(RehearsedCampaign rehearsed)
    {
        var text = new StringBuilder("lot,specimen,frequency_hz,se_db,noise_dbm\n");
        foreach (TrueShielding specimen in rehearsed.Truth)
        {
            for (int f = 0; f < rehearsed.Grid.Count; f++)
            {
                text.Append(CultureInfo.InvariantCulture,
                    $"{specimen.Name.Lot},{specimen.Name.Specimen},{rehearsed.Grid[f].Value:R},{specimen.ShieldingDb[f]:0.0000},"
                        + $"{rehearsed.NoiseDbm[f]:0.0000}\n");
            }
        }

        return text.ToString();
    }
}
