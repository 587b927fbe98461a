using System.Text;

namespace ZoneControl.Cli.Files;

/// <summary>
/// A file that appears whole or not at all. It is written beside its target under a passing name, which also shows before
/// any work is done that the place can be written to, and moved over the target by <see cref="Commit"/>. Disposing it
/// without that leaves nothing behind.
/// </summary>
public sealed class PendingFile : IDisposable
{
    private readonly string _target;
    private readonly string _passing;
    private readonly FileStream _stream;
    private bool _open = true;

    /// <summary>Opens the passing file.</summary>
    /// <param name="path">Where the finished file will be.</param>
    /// <exception cref="BadInputException">The place cannot be written to; the message says why.</exception>
    public PendingFile(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (path.Trim().Length == 0)
            throw new BadInputException("A file name is empty; give a name such as report.html.");
        _target = Target(path);
        string folder = Path.GetDirectoryName(_target)!;
        // Moving a file over a device would replace the device itself.
        if (IsAmongDevices(Path.GetFullPath(path)) || IsAmongDevices(_target))
            throw new BadInputException($"{path}: is a device; give the name of a file.");
        if (Directory.Exists(_target))
            throw new BadInputException($"{path}: is a folder; give the name of a file in it.");
        if (!Directory.Exists(folder))
            throw new BadInputException($"{path}: the folder {folder} does not exist; make it first or choose another.");
        _passing = Path.Combine(folder, $".{Path.GetFileName(_target)}.{Guid.NewGuid():N}.part");
        try
        {
            _stream = new FileStream(_passing, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException($"{path}: cannot be written ({Reason(e)}); choose another place.");
        }
    }

    /// <summary>Writes the whole content as UTF-8 without a byte order mark and puts the file in its place.</summary>
    /// <exception cref="BadInputException">The disk is full, or the target cannot be replaced; nothing is left behind.</exception>
    public void Commit(Action<TextWriter> write)
    {
        ArgumentNullException.ThrowIfNull(write);
        try
        {
            using (var writer = new StreamWriter(_stream, new UTF8Encoding(false), leaveOpen: true))
                write(writer);
            _stream.Flush(flushToDisk: true);
            _stream.Dispose();
            File.Move(_passing, _target, overwrite: true);
            _open = false;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException($"{_target}: could not be written ({Reason(e)}); what stood there before is unchanged.");
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (!_open)
            return;
        _open = false;
        _stream.Dispose();
        try
        {
            File.Delete(_passing);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The passing file's name shows what it is; failing here would hide the reason why it was not finished.
        }
    }

    /// <summary>Follows a link, so that the link stays and what it points to is replaced.</summary>
    private static string Target(string path)
    {
        string full = Path.GetFullPath(path);
        try
        {
            return File.ResolveLinkTarget(full, returnFinalTarget: true)?.FullName ?? full;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Whether a file can be written there is found out next, with the reason.
            return full;
        }
    }

    private static bool IsAmongDevices(string path) => !OperatingSystem.IsWindows() &&
        (path.StartsWith("/dev/", StringComparison.Ordinal) || path.StartsWith("/proc/", StringComparison.Ordinal));

    private static string Reason(Exception e) => e.Message.Split('\n')[0].TrimEnd('.');
}
