using ZoneControl.Cli.Files;

namespace ZoneControl.Cli.Tests;

public sealed class PendingFileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("zonecontrol-").FullName;

    private string Path(string name) => System.IO.Path.Combine(_folder, name);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_committed_file_holds_all_of_it_and_nothing_else_is_left()
    {
        using (var file = new PendingFile(Path("a.txt")))
            file.Commit(w => w.Write("grün"));
        Assert.Equal("grün"u8.ToArray(), File.ReadAllBytes(Path("a.txt")));
        Assert.Single(Directory.GetFileSystemEntries(_folder));
    }

    [Fact]
    public void A_file_that_was_not_committed_leaves_what_stood_there()
    {
        File.WriteAllText(Path("a.txt"), "before");
        using (new PendingFile(Path("a.txt")))
            Assert.Equal(2, Directory.GetFileSystemEntries(_folder).Length);
        Assert.Equal("before", File.ReadAllText(Path("a.txt")));
        Assert.Single(Directory.GetFileSystemEntries(_folder));
    }

    [Fact]
    public void A_disk_that_fills_up_leaves_what_stood_there_and_says_so()
    {
        File.WriteAllText(Path("a.txt"), "before");
        using (var file = new PendingFile(Path("a.txt")))
        {
            BadInputException e = Assert.Throws<BadInputException>(() => file.Commit(w =>
            {
                w.Write("half");
                w.Flush();
                throw new IOException("No space left on device");
            }));
            Assert.Contains("No space left on device", e.Message, StringComparison.Ordinal);
        }

        Assert.Equal("before", File.ReadAllText(Path("a.txt")));
        Assert.Single(Directory.GetFileSystemEntries(_folder));
    }

    [Fact]
    public void A_place_that_cannot_be_written_to_is_named_before_any_work()
    {
        Assert.Contains("does not exist", Refused(Path("nowhere/a.txt")), StringComparison.Ordinal);
        Assert.Contains("is a folder", Refused(_folder), StringComparison.Ordinal);
        Assert.Contains("file name is empty", Refused(" "), StringComparison.Ordinal);
        if (!OperatingSystem.IsWindows())
            Assert.Contains("is a device", Refused("/dev/null"), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(_folder));
    }

    [Fact]
    public void A_link_from_among_the_devices_is_a_device_whatever_it_points_to()
    {
        // /dev/stdout leads to the file that standard output goes to; moving a report over it would replace that file.
        if (!OperatingSystem.IsWindows())
            Assert.Contains("is a device", Refused("/dev/stdout"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_link_stays_a_link_and_what_it_points_to_is_replaced()
    {
        if (OperatingSystem.IsWindows())
            return;
        File.WriteAllText(Path("real.txt"), "before");
        File.CreateSymbolicLink(Path("link.txt"), Path("real.txt"));
        using (var file = new PendingFile(Path("link.txt")))
            file.Commit(w => w.Write("after"));
        Assert.Equal("after", File.ReadAllText(Path("real.txt")));
        Assert.NotNull(new FileInfo(Path("link.txt")).LinkTarget);
    }

    private static string Refused(string path) => Assert.Throws<BadInputException>(() => new PendingFile(path).Dispose()).Message;
}
