using System.Globalization;
using System.Runtime.InteropServices;
using SweepStats.Acceptance.Commands;
using SweepStats.Acceptance.Files;
using SweepStats.Cli;
using SweepStats.Files.Places;
using Xunit;

namespace SweepStats.Acceptance.Faults;

/// <summary>Runs that a signal ends, or that find something in their way at the last moment, leave nothing half.</summary>
public sealed class EndedRuns : IDisposable
{
    private readonly ScratchFolder _folder = new();

    private string Target => Path.Combine(_folder.Path, "new/values.csv");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void ASignalBetweenTwoLinesOfAFileLeavesNothing()
    {
        var file = new GatheredFile(Target);
        file.Content.Write("half a line"u8);
        file.Content.Flush();
        file.Interruption.End();
        // The thread that writes does not know yet.
        Thread writing = Started(() =>
        {
            using (file)
            {
                file.Content.Write("and the rest"u8);
                file.Commit(overwrite: true);
            }
        });
        Assert.True(WaitsForEver(writing));
        Assert.Empty(Directory.EnumerateFileSystemEntries(_folder.Path));
    }

    [Fact]
    public void ASignalBeforeTheSecondOfTwoFilesLeavesNeither()
    {
        GatheredFile one = new(Path.Combine(_folder.Path, "sweeps.csv")),
            other = new(Path.Combine(_folder.Path, "campaign.toml"));
        other.Interruption.End();
        Thread writing = Started(() =>
        {
            using (one)
            using (other)
            {
                GatheredFile.CommitBoth(one, other);
            }
        });
        Assert.True(WaitsForEver(writing));
        one.Interruption.End();
        Assert.Empty(Directory.EnumerateFileSystemEntries(_folder.Path));
    }

    [Fact]
    public void ASignalWaitsForTheStepThatIsBeingTaken()
    {
        using ManualResetEventSlim within = new(), goOn = new();
        bool tidied = false, stepped = false;
        using var interruption = new Interruption(() => tidied = stepped);
        Thread step = Started(() => interruption.Step(() =>
        {
            within.Set();
            goOn.Wait();
            stepped = true;
        }));
        within.Wait();
        Thread signal = Started(interruption.End);
        Assert.True(WaitsForEver(signal));
        goOn.Set();
        step.Join();
        signal.Join();
        Assert.True(tidied);
    }

    /// <summary>Thrown on the thread of the signal it would end the run with a trace.</summary>
    [Fact]
    public void TidyingThatFailsDoesNotKeepASignalFromEndingTheRun()
    {
        int asked = 0;
        using var interruption = new Interruption(() => throw new InvalidOperationException($"asked {++asked} times"));
        interruption.End();
        interruption.End();
        Assert.Equal(2, asked);
    }

    /// <summary>
    /// Between a signal and the end of the run its own threads go on: what they begin then, nobody would tidy up.
    /// </summary>
    [Fact]
    public void WhatBeginsAfterASignalTakesNoStep()
    {
        var end = new Ending();
        bool tidied = false, stepped = false;
        using Interruption before = new(() => tidied = true, end), gone = new(() => throw new InvalidOperationException(), end);
        gone.Dispose();
        end.Begin();
        Assert.True(tidied);
        using var after = new Interruption(() => { }, end);
        Assert.True(WaitsForEver(Started(() => after.Step(() => stepped = true))));
        Assert.False(stepped);
    }

    /// <summary>A call that a signal interrupts says nothing of other runs: EINTR, then done, or EWOULDBLOCK.</summary>
    [Theory]
    [InlineData(true, 4, 4, 0)]
    [InlineData(false, 4, 11)]
    [InlineData(null, 4, 9)]
    public void AnInterruptedCallIsMadeAgain(bool? held, params int[] errors)
    {
        int calls = 0;
        Assert.Equal(held, UnixCalls.Held(() =>
        {
            Marshal.SetLastPInvokeError(errors[calls]);
            return errors[calls++] == 0 ? 0 : -1;
        }));
        Assert.Equal(errors.Length, calls);
    }

    [Theory]
    [InlineData("campaign.toml")]
    [InlineData("sweeps.csv")]
    public void OfTwoFilesNeitherIsWrittenWhereOneOfThemCameMeanwhile(string came)
    {
        using GatheredFile manifest = new(Path.Combine(_folder.Path, "sweeps.csv")),
            settings = new(Path.Combine(_folder.Path, "campaign.toml"));
        manifest.Content.Write("file,role\n"u8);
        settings.Content.Write("title = \"new\"\n"u8);
        _folder.With(came, "years of work");
        Assert.ThrowsAny<IOException>(() => GatheredFile.CommitBoth(manifest, settings));
        manifest.Dispose();
        settings.Dispose();
        Assert.Equal([came], Directory.EnumerateFileSystemEntries(_folder.Path).Select(Path.GetFileName));
        Assert.Equal("years of work", File.ReadAllText(Path.Combine(_folder.Path, came)));
    }

    /// <summary>
    /// A sweeper that looks just when a run makes its lock takes it for a dead one's: it holds it before the run does, or has
    /// removed it already.
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void ALockThatIsSweptInTheInstantOfItsMakingIsTakenAnew(bool held)
    {
        int swept = 0;
        using (RunLock.Take(_folder.Path, new HiddenName("report"),
            file => swept++ < 3 ? Swept(file, held) : new FileStream(file, FileMode.CreateNew)))
        {
            Assert.Equal(4, swept);
            Assert.Single(Directory.EnumerateFileSystemEntries(_folder.Path));
        }

        Assert.Empty(Directory.EnumerateFileSystemEntries(_folder.Path));
    }

    [Fact]
    public void ALockThatIsSweptAgainAndAgainIsGivenUp()
    {
        int swept = 0;
        IOException given = Assert.ThrowsAny<IOException>(() => RunLock.Take(_folder.Path, new HiddenName("report"),
            file => swept++ < 1000 ? Swept(file, held: swept % 2 == 0) : new FileStream(file, FileMode.CreateNew)));
        Assert.Equal($"other runs sweep '{_folder.Path}' all the time", given.Message);
    }

    [Fact]
    public void ARunThatWaitsForAnotherSaysSoAndEndsOnASignal()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        using Held held = Hold();
        using var run = new OwnProcess("run", Shell.Demo, "--out", held.Report, "--charts", "none", "--quiet");
        Assert.Equal($"sweepstats: {held.Report}: another run is putting its files there; waiting for it, Ctrl-C gives up",
            run.NextError());
        // Not that of Ctrl-C, which a run in the background may have been told to ignore.
        run.Signal("TERM");
        Assert.Equal((143, ""), run.End());
        Assert.Empty(Directory.EnumerateFileSystemEntries(held.Report));
    }

    [Fact]
    public void ARehearsalThatWaitsForAnotherSaysSo()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        using Held held = Hold();
        using var run = new OwnProcess("rehearse", held.Report, "--points", "11");
        Assert.Equal($"sweepstats: {held.Report}: another run is putting its files there; waiting for it, Ctrl-C gives up",
            run.NextError());
        held.Release();
        Assert.Equal((0, ""), run.End());
        Assert.True(File.Exists(Path.Combine(held.Report, "campaign.toml")));
    }

    [Fact]
    public void ARunThatWaitsForAnotherGoesOnAfterIt()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        using Held held = Hold();
        using var run = new OwnProcess("run", Shell.Demo, "--out", held.Report, "--charts", "none", "--quiet");
        Assert.Contains("waiting", run.NextError(), StringComparison.Ordinal);
        held.Release();
        Assert.Equal((0, ""), run.End());
        Assert.True(File.Exists(Path.Combine(held.Report, "summary.json")));
    }

    /// <summary>
    /// Else a browser that outlives its run would go on holding the folder. The flag is O_CLOEXEC, octal 2000000.
    /// </summary>
    [Fact]
    public void NoProgramThatARunStartsInheritsAFolder()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        using UnixCalls.FolderHandle open = UnixCalls.Open(_folder.Path)!;
        string flags = File.ReadLines(string.Create(CultureInfo.InvariantCulture, $"/proc/self/fdinfo/{open.Number}"))
            .Single(line => line.StartsWith("flags:", StringComparison.Ordinal));
        Assert.NotEqual(0, Convert.ToInt32(flags[6..].Trim(), 8) & Convert.ToInt32("2000000", 8));
    }

    [Fact]
    public void ASignalEndsTheBrowserThatPrintsToo()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        string browser = Path.Combine(_folder.Path, "bin/chromium"), report = Path.Combine(_folder.Path, "out/report");
        _folder.With("bin/chromium", $"#!/bin/sh\necho $$ > {_folder.Path}/number\nexec sleep 600\n");
        File.SetUnixFileMode(browser, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        var path = new Dictionary<string, string>
        {
            ["PATH"] =
            $"{Path.GetDirectoryName(browser)}:{Environment.GetEnvironmentVariable("PATH")}",
        };
        using var run = new OwnProcess(path, "run", Shell.Demo, "--out", report, "--charts", "none", "--pdf", "--quiet");
        string number = Path.Combine(_folder.Path, "number");
        Assert.True(
            SpinWait.SpinUntil(() => File.Exists(number) && File.ReadAllText(number).EndsWith('\n'), TimeSpan.FromMinutes(5)));
        run.Signal("TERM");
        Assert.Equal((143, ""), run.End());
        Assert.False(Directory.Exists(Path.Combine(_folder.Path, "out")));
        Assert.True(
            SpinWait.SpinUntil(() => !Directory.Exists($"/proc/{File.ReadAllText(number).Trim()}"), TimeSpan.FromMinutes(1)));
    }

    [Fact]
    public void ASignalWhileScratchForPrintingIsMadeRemovesIt()
    {
        string scratch = Path.Combine(_folder.Path, "scratch");
        Thread? signal = null;
        PrintingBrowser browser = null!;
        browser = new PrintingBrowser("chromium", () =>
        {
            signal = Started(browser.Interruption!.End);
            Assert.True(WaitsForEver(signal));
            return Directory.CreateDirectory(scratch);
        });
        Thread print = Started(() => browser.Print(Path.Combine(_folder.Path, "page.html")));
        Assert.True(SpinWait.SpinUntil(() => signal is { IsAlive: false }, TimeSpan.FromMinutes(1)));
        Assert.True(WaitsForEver(print));
        Assert.False(Directory.Exists(scratch));
    }

    private static FileStream Swept(string file, bool held)
    {
        var made = new FileStream(file, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None);
        try
        {
            // The system says so of a file that another program holds.
            return held ? new FileStream(file, FileMode.Open, FileAccess.ReadWrite, FileShare.None) : Removed(made);
        }
        catch (IOException)
        {
            Removed(made).Dispose();
            throw;
        }
    }

    private static FileStream Removed(FileStream made)
    {
        File.Delete(made.Name);
        return made;
    }

    private static Thread Started(Action work)
    {
        var thread = new Thread(() => work()) { IsBackground = true };
        thread.Start();
        return thread;
    }

    private static bool WaitsForEver(Thread thread)
    {
        SpinWait.SpinUntil(() => !thread.IsAlive || thread.ThreadState.HasFlag(System.Threading.ThreadState.WaitSleepJoin),
            TimeSpan.FromMinutes(1));
        return thread.IsAlive;
    }

    // A folder that has to be written within, since nothing may be created beside it, and that this process holds.
    private Held Hold()
    {
        Directory.CreateDirectory(Path.Combine(_folder.Path, "locked/report"));
        return new Held(Path.Combine(_folder.Path, "locked"));
    }

    private sealed class Held : IDisposable
    {
        private readonly string _above;
        private readonly UnixCalls.FolderHandle _open;

        public Held(string above)
        {
            _above = above;
            _open = UnixCalls.Open(Report)!;
            Assert.True(UnixCalls.TryHold(_open));
            Mode(UnixFileMode.UserRead | UnixFileMode.UserExecute);
        }

        public string Report => Path.Combine(_above, "report");

        public void Release() => _open.Dispose();

        public void Dispose()
        {
            Release();
            Mode(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }

        private void Mode(UnixFileMode mode)
        {
            if (!OperatingSystem.IsWindows())
            {
                File.SetUnixFileMode(_above, mode);
            }
        }
    }
}
