using System.Runtime.CompilerServices;
using SweepStats.Storage;
using Xunit;

namespace SweepStats.Tests.Storage;

public sealed class RowStoreTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory();

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void WhatFitsStaysWhereItIs()
    {
        double[] row = [1, 2, 3];
        KeptRows kept = new RowStore(3 * sizeof(double), _folder.FullName).Keep(row);

        Assert.Same(row, kept.Rows[0]);
        Assert.Equal(3, kept.RowLength);
    }

    [Fact]
    public void WhatDoesNotFitHasTheSameBitsOnceTheCollectorWasThere()
    {
        var store = new RowStore(0, _folder.FullName);
        KeptRows[] kept = [.. Enumerable.Range(0, 20).Select(k => Kept(store, k))];
        GC.Collect();

        for (int k = 0; k < kept.Length; k++)
        {
            Assert.Equal(Numbers(k, 0), kept[k].Rows[0]);
            Assert.Equal(Numbers(k, 1), kept[k].Rows[1]);
        }
    }

    [Fact]
    public void NumbersSideBySideAreThoseOfTheRow()
    {
        foreach (long room in new[] { 0, long.MaxValue })
        {
            KeptRows kept = Kept(new RowStore(room, _folder.FullName), 7);
            var few = new double[5];
            kept.Read(1, 90, few);
            Assert.Equal(Numbers(7, 1)[90..95], few);

            _ = kept.Rows;
            kept.Read(0, 3, few);
            Assert.Equal(Numbers(7, 0)[3..8], few);
        }
    }

    [Fact]
    public void EachThreadReadsItsOwn()
    {
        var store = new RowStore(1000, _folder.FullName);
        var kept = new KeptRows[400];
        Parallel.For(0, kept.Length, k => kept[k] = Kept(store, k));
        GC.Collect();

        Parallel.For(0, kept.Length, k => Assert.Equal(Numbers(k, 1), kept[k].Rows[1]));
    }

    [Fact]
    public void NothingIsLeftInTheFolder()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        KeptRows kept = Kept(new RowStore(0, _folder.FullName), 1);

        Assert.Empty(_folder.EnumerateFileSystemInfos());
        Assert.Equal(Numbers(1, 0), kept.Rows[0]);
    }

    [Fact]
    public void WithoutAFolderItSaysWhatToDo()
    {
        string missing = Path.Combine(_folder.FullName, "not-there");

        string told = Assert.Throws<ScratchFileException>(() => Kept(new RowStore(0, missing), 1)).Message;

        Assert.Contains(missing, told, StringComparison.Ordinal);
        Assert.Contains("TMPDIR", told, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatCanNoLongerBeReadIsToldAsTheTemporaryFiles()
    {
        var empty = ScratchFile.In(_folder.FullName);

        string told = Assert.Throws<ScratchFileException>(() => empty.Read(0, new double[2])).Message;

        Assert.StartsWith("Run the command once more", told, StringComparison.Ordinal);
        Assert.Contains(_folder.FullName, told, StringComparison.Ordinal);
    }

    // In a method of its own, so that nobody holds the rows.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static KeptRows Kept(RowStore store, int seed) => store.Keep(Numbers(seed, 0), Numbers(seed, 1));

    private static double[] Numbers(int seed, int row) =>
        [.. Enumerable.Range(0, 101).Select(f => Math.Sin((seed * 1000) + (row * 200) + f))];
}
