namespace SweepStats.Files.Results;

/// <summary>How many digits of a level are written.</summary>
public enum LevelDigits
{
    /// <summary>Three decimals, as receivers export.</summary>
    ThreeDecimals,

    /// <summary>As many as give the same number back.</summary>
    All,
}
