using SweepStats.Studies.Trust;

namespace SweepStats.Studies.Benches;

/// <summary>Readings of one kind and range, counted.</summary>
internal sealed class ReadingTally
{
    private readonly List<double> _widths = [];
    private readonly List<CampaignShare> _campaigns = [];

    public int Readings { get; private set; }

    public int Nothing { get; private set; }

    public int TwoSided { get; private set; }

    public int TwoSidedHeld { get; private set; }

    public int Bounds { get; private set; }

    public int BoundsHeld { get; private set; }

    public int LowOver { get; private set; }

    public int HighUnder { get; private set; }

    /// <summary>Readings that conform to the requirement in truth, and that do not.</summary>
    public int Conforming { get; private set; }

    public int NotConforming { get; private set; }

    public int FalseMeets { get; private set; }

    public int FalseFails { get; private set; }

    /// <summary>Claims of campaigns that are called trustworthy, and those of them that hold.</summary>
    public int TrustedClaims { get; private set; }

    public int TrustedHeld { get; private set; }

    public Share Held => new(TwoSidedHeld + BoundsHeld, TwoSided + Bounds);

    /// <summary>Standard error of the share held in percent, by how campaigns differ: readings of one share errors.</summary>
    /// <remarks>
    /// Ratio estimator over campaigns, √(Σ(h − p·c)²·k/(k − 1))/C; Cochran, Sampling Techniques, 1977, 6.3 (from memory).
    /// Not a number for a single campaign.
    /// </remarks>
    public double HeldErrorPercent
    {
        get
        {
            if (_campaigns.Count < 2 || Held.Of == 0)
            {
                return double.NaN;
            }

            double square = _campaigns.Sum(c => Math.Pow(c.Held - (Held.Value * c.Claims), 2));
            return 100 * Math.Sqrt(square * _campaigns.Count / (_campaigns.Count - 1)) / Held.Of;
        }
    }

    public double MedianWidthDb
    {
        get
        {
            _widths.Sort();
            int half = _widths.Count / 2;
            return _widths.Count == 0 ? double.NaN : (_widths[(_widths.Count - 1) / 2] + _widths[half]) / 2;
        }
    }

    /// <summary>Counts readings of one campaign.</summary>
    public void Add(IReadOnlyCollection<JudgedReading> readings, bool trusted)
    {
        int claims = readings.Count(r => r.Standing != Standing.Nothing);
        int held = readings.Count(r => r.Held);
        _campaigns.Add(new CampaignShare(held, claims));
        (TrustedClaims, TrustedHeld) = trusted ? (TrustedClaims + claims, TrustedHeld + held) : (TrustedClaims, TrustedHeld);
        foreach (JudgedReading reading in readings)
        {
            Count(reading);
        }
    }

    private void Count(JudgedReading reading)
    {
        Readings++;
        Nothing += One(reading.Standing == Standing.Nothing);
        TwoSided += One(reading.TwoSided);
        TwoSidedHeld += One(reading.Standing == Standing.Inside);
        Bounds += One(reading.Bound);
        BoundsHeld += One(reading.Standing == Standing.BoundHolds);
        LowOver += One(reading.Standing is Standing.LowOver or Standing.BoundOver);
        HighUnder += One(reading.Standing == Standing.HighUnder);
        Conforming += One(reading.Conforms == true);
        NotConforming += One(reading.Conforms == false);
        FalseMeets += One(reading.FalseMeets);
        FalseFails += One(reading.FalseFails);
        if (reading.TwoSided)
        {
            _widths.Add(reading.WidthDb);
        }
    }

    private static int One(bool yes) => yes ? 1 : 0;

    private readonly record struct CampaignShare(int Held, int Claims);
}
