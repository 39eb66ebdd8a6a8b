using System.Text;

namespace RackController.RackFile.Binding;

/// <summary>Reads a file that a person wrote, and says in one line what is in the way when it is none.</summary>
public static class TextFile
{
    /// <summary>The largest file that is read, in bytes: 1 MiB, hundreds of times what a site needs.</summary>
    public const int LargestBytes = 1 << 20;

    /// <summary>Reads a whole file as UTF-8 text.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="complaints">Where to say what is wrong.</param>
    /// <param name="text">The text, without a byte order mark; empty unless the outcome is
    /// <see cref="TextFileOutcome.Read"/>.</param>
    public static TextFileOutcome Read(string path, Complaints complaints, out string text)
    {
        text = "";
        if (Directory.Exists(path))
        {
            complaints.Refuse(Place.Start, "this is a directory", "name a file in it");
            return TextFileOutcome.Unreadable;
        }

        try
        {
            using var stream = File.OpenRead(path);
            var buffer = new byte[LargestBytes + 1];
            var length = stream.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
            return Decode(buffer.AsSpan(0, length), complaints, out text);
        }
        catch (Exception fault) when (fault is FileNotFoundException or DirectoryNotFoundException)
        {
            complaints.Refuse(Place.Start, "there is no such file", "check the path");
        }
        catch (UnauthorizedAccessException)
        {
            complaints.Refuse(Place.Start, "the file may not be read by this user", "give read permission, or run as its owner");
        }
        catch (Exception fault) when (fault is IOException or ArgumentException or NotSupportedException)
        {
            complaints.Refuse(
                Place.Start, $"the file could not be read ({Reason(fault)})",
                "check the path and the disk");
        }

        return TextFileOutcome.Unreadable;
    }

    private static string Reason(Exception fault) =>
        fault.Message.ReplaceLineEndings(" ").Replace(": ", ", ", StringComparison.Ordinal).TrimEnd('.');

    private static TextFileOutcome Decode(ReadOnlySpan<byte> bytes, Complaints complaints, out string text)
    {
        text = "";
        if (bytes.Length > LargestBytes)
        {
            complaints.Refuse(
                Place.Start, "the file is larger than 1 MiB",
                "this is not a file for this program; check the path");
            return TextFileOutcome.NotText;
        }

        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
        {
            bytes = bytes[3..];
        }

        try
        {
            text = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true).GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            text = "\0";
        }

        if (text.Any(letter => char.IsControl(letter) && letter is not ('\n' or '\r' or '\t')))
        {
            text = "";
            complaints.Refuse(Place.Start, "the file is not UTF-8 text", "check the path, or save the file as plain UTF-8 text");
            return TextFileOutcome.NotText;
        }

        return TextFileOutcome.Read;
    }
}

/// <summary>How reading a text file went.</summary>
public enum TextFileOutcome
{
    /// <summary>The text is here.</summary>
    Read,

    /// <summary>The file is there and holds no text that could be meant.</summary>
    NotText,

    /// <summary>The file could not be opened or read.</summary>
    Unreadable,
}
