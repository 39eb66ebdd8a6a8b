using System.Text.Json;
using NodaTime;
using RackController.Service;

namespace RackController.Notices;

/// <summary>Keeps what must outlast a power cut, in one file that is written whole.</summary>
/// <param name="path">The file.</param>
internal sealed class NoticesFile(string path)
{
    private string? written;

    /// <summary>Reads it. One that makes no sense is put aside: what was to be told is lost then, and what comes is told.</summary>
    /// <param name="now">The time, for the new name of a file that is put aside.</param>
    /// <param name="trouble">What was wrong with it; null when nothing was.</param>
    /// <exception cref="CouldNotRunException">It is there and cannot be read or put aside.</exception>
    public Kept Read(Instant now, out string? trouble)
    {
        trouble = null;
        try
        {
            if (!File.Exists(path))
            {
                return new Kept();
            }

            var text = File.ReadAllText(path);
            var kept = Parse(text, out trouble);
            if (kept is null)
            {
                var aside = $"{path}-{now.ToString("uuuuMMdd'T'HHmmss'Z'", System.Globalization.CultureInfo.InvariantCulture)}-unreadable";
                File.Move(path, aside, overwrite: true);
                trouble = $"what was kept of notices made no sense ({trouble}) and lies in {Path.GetFileName(aside)} now; a message that "
                    + "waited may be lost";
                return new Kept();
            }

            written = text;
            return kept;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new CouldNotRunException($"{path} cannot be read: {e.Message.TrimEnd('.')}: run this as the account of the service", e);
        }
    }

    /// <summary>Writes it, if it differs from what is on the disk.</summary>
    /// <param name="kept">What.</param>
    /// <returns>Why it could not be written; null when it was.</returns>
    public string? Write(Kept kept)
    {
        var text = JsonSerializer.Serialize(kept, KeptJson.Default.Kept) + "\n";
        if (text == written)
        {
            return null;
        }

        try
        {
            WholeFile.Write(path, text, isPrivate: true);
            written = text;
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return $"{path} cannot be written ({e.Message.TrimEnd('.')}): after a restart something may be told twice";
        }
    }

    private static Kept? Parse(string text, out string? trouble)
    {
        trouble = null;
        try
        {
            var kept = JsonSerializer.Deserialize(text, KeptJson.Default.Kept);
            trouble = kept is null ? "it says nothing" : null;
            return kept is null || kept.Ways.IsDefault || kept.Alarms.IsDefault || kept.Pending.IsDefault || kept.Outbox.IsDefault
                ? null
                : kept;
        }
        catch (JsonException e)
        {
            trouble = e.Message.ReplaceLineEndings(" ").TrimEnd('.');
            return null;
        }
    }
}
