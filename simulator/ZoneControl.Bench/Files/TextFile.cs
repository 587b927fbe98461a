using System.Text;

namespace ZoneControl.Bench.Files;

/// <summary>Reads a text file whole. Whatever prevents it is a mistake, never an exception.</summary>
internal static class TextFile
{
    private static readonly UTF8Encoding _strict = new(false, true);

    /// <summary>The text, or null after noting why there is none.</summary>
    public static string? Read(string path, MistakeList mistakes)
    {
        byte[]? bytes = Bytes(path, mistakes);
        if (bytes is null)
            return null;
        try
        {
            string text = _strict.GetString(bytes);
            return text.StartsWith('\uFEFF') ? text[1..] : text;
        }
        catch (DecoderFallbackException e)
        {
            int line = 1 + bytes.Take(Math.Max(0, e.Index)).Count(b => b == '\n');
            mistakes.Error(new Place(line, 1), "", "bytes that are not UTF-8", "a text file in UTF-8");
            return null;
        }
    }

    private static byte[]? Bytes(string path, MistakeList mistakes)
    {
        const string Expected = "a text file in UTF-8";
        try
        {
            if (Directory.Exists(path))
            {
                mistakes.Error(default, "", "a folder", Expected);
                return null;
            }

            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            byte[] bytes = new byte[TomlText.LongestText + 1];
            int count = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            if (count <= TomlText.LongestText)
                return bytes[..count];
            mistakes.Error(default, "", "a file of more than 1 MiB", "a file of at most 1 MiB");
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            mistakes.Error(default, "", "no such file", "");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            mistakes.Error(default, "", "a file that cannot be read", Expected, Words.Clean(e.Message));
        }

        return null;
    }
}
