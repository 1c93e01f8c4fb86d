namespace SweepStats.Files.Places;

/// <summary>The hidden folder that files are gathered in, and the lock that shows that its run is alive.</summary>
internal sealed class GatheringPlace
{
    private const int MostTries = 50;
    private static readonly TimeSpan BetweenTries = TimeSpan.FromMilliseconds(20);

    private readonly MadeFolders _made = new();
    private readonly string _target;
    private readonly Predecessor _predecessor;
    private readonly HiddenName _name;
    private readonly RunLock _lock;
    private bool _left;

    private GatheringPlace(string target, Predecessor predecessor, string folder)
    {
        (_target, _predecessor, _name) = (target, predecessor, new HiddenName(Path.GetFileName(target)));
        IsWithin = folder == target;
        try
        {
            _made.Make(folder);
            _lock = RunLock.Take(folder, _name);
            Stage = Path.Combine(folder, _name.Of(_lock.Run, HiddenName.Part));
        }
        catch
        {
            _made.Undo();
            throw;
        }

        try
        {
            if (!IsWithin)
            {
                new Leftovers(folder, _name).Sweep(target, _lock, predecessor);
            }

            Directory.CreateDirectory(Stage);
        }
        catch
        {
            Leave(committed: false);
            throw;
        }
    }

    /// <summary>Path of the hidden folder in which files are gathered.</summary>
    public string Stage { get; }

    /// <summary>Whether it lies within the target, whose files are then exchanged one by one.</summary>
    public bool IsWithin { get; }

    /// <summary>Makes one beside the target, or within it where that has to be.</summary>
    /// <exception cref="IOException">Nothing can be created there.</exception>
    public static GatheringPlace For(string target, Predecessor predecessor)
    {
        string beside = Path.GetDirectoryName(target)!;
        if (!Directory.Exists(target))
        {
            // What a killed run left between two steps may stand there again now.
            return KeepingRights(new GatheringPlace(target, predecessor, beside));
        }

        if (IsMountPoint(target))
        {
            return new GatheringPlace(target, predecessor, target);
        }

        try
        {
            return KeepingRights(new GatheringPlace(target, predecessor, beside));
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException)
        {
            return new GatheringPlace(target, predecessor, target);
        }
    }

    /// <summary>Sweeps away what killed runs left within the target.</summary>
    public void SweepWithin() => new Leftovers(_target, _name).Sweep(_target, _lock, _predecessor);

    /// <summary>
    /// Takes the place away; what stood at the target before, and is removed with care, stays where it could not be.
    /// </summary>
    public void Leave(bool committed)
    {
        if (_left)
        {
            return;
        }

        _left = true;
        if (!committed || IsWithin)
        {
            Remove();
        }

        _lock.Dispose();
        if (!committed)
        {
            _made.Undo();
        }
    }

    private static GatheringPlace KeepingRights(GatheringPlace place)
    {
        try
        {
            if (!Directory.Exists(place._target) || FolderRights.CarryWorkable(place._target, place.Stage))
            {
                return place;
            }
        }
        catch
        {
            place.Leave(committed: false);
            throw;
        }

        place.Leave(committed: false);
        return new GatheringPlace(place._target, place._predecessor, place._target);
    }

    // A file that another thread is just creating may come while the folder goes.
    private void Remove()
    {
        for (int tries = 1; Directory.Exists(Stage); tries++)
        {
            try
            {
                FolderRights.MakeWorkable(Stage);
                Directory.Delete(Stage, recursive: true);
            }
            catch (Exception e) when (tries < MostTries && e is IOException or UnauthorizedAccessException)
            {
                Thread.Sleep(BetweenTries);
            }
        }
    }

    private static bool IsMountPoint(string folder)
    {
        try
        {
            return Array.Exists(DriveInfo.GetDrives(), drive => Path.TrimEndingDirectorySeparator(drive.Name) == folder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}
