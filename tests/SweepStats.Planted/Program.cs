using System.Globalization;
using SweepStats.Planted;
using SweepStats.Planted.Trials;

// What planted.sh runs. study SEED COUNT PAGE plants faults and writes the page; look SECONDS SEED COUNT tries them with the
// quick tests alone; look SECONDS WORDS tries all faults that hold the words; tests PLAN runs tests beside the core that lies
// there.
switch (args)
{
    case ["study", var seed, var count, var page] when IsWhole(seed) && IsWhole(count):
        Study.Write(page, Number(count), (ulong)Number(seed));
        return 0;
    case ["look", var seconds, var seed, var count] when IsWhole(seconds) && IsWhole(seed) && IsWhole(count):
        Study.Look(Number(seconds), Number(count), (ulong)Number(seed));
        return 0;
    case ["look", var seconds, .. var words] when IsWhole(seconds) && words.Length > 0:
        Study.Look(Number(seconds), words);
        return 0;
    case ["tests", var plan]:
        return TestRun.Of(File.ReadLines(plan));
    default:
        Console.Error.WriteLine("usage: study SEED COUNT PAGE | look SECONDS SEED COUNT | look SECONDS WORDS... | tests PLAN");
        return 2;
}

static bool IsWhole(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out _);

static int Number(string text) => int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);
