using System.Diagnostics;
using System.Globalization;

namespace SweepStats.Studies.Trust;

/// <summary>trust, trust-clean and trust-faults: false alarms, and faults found.</summary>
internal static class TrustCommand
{
    public const string Both = "trust";
    public const string Clean = "trust-clean";
    public const string Faults = "trust-faults";

    private const int CleanCampaigns = 500;
    private const int FaultyCampaigns = 400;

    public static int Run(string which, string folder, string? campaigns)
    {
        int most = int.MaxValue;
        if (campaigns is not null
            && !(int.TryParse(campaigns, NumberStyles.None, CultureInfo.InvariantCulture, out most) && most > 0))
        {
            return 2;
        }

        Directory.CreateDirectory(folder);
        var watch = Stopwatch.StartNew();
        if (which != Faults)
        {
            AlarmTable.Draw(folder, Math.Min(CleanCampaigns, most));
            Console.Error.WriteLine($"clean campaigns: {watch.Elapsed.TotalSeconds:0} s");
        }

        if (which != Clean)
        {
            DetectionTable.Draw(folder, Math.Min(FaultyCampaigns, most));
            Console.Error.WriteLine($"with faults: {watch.Elapsed.TotalSeconds:0} s");
        }

        if (which == Both)
        {
            TrustDigest.Write(folder);
        }

        return 0;
    }
}
