namespace SweepStats.Report.Budgets;

/// <summary>A bar of a budget.</summary>
/// <param name="Row">Its row from the top.</param>
/// <param name="Value">Its length in dB.</param>
internal readonly record struct BudgetBar(double Row, double Value);
