namespace RackController.Notices;

/// <summary>A file that holds a secret on its first line, so that no rack file does.</summary>
internal static class SecretFile
{
    private const UnixFileMode Others = UnixFileMode.OtherRead | UnixFileMode.OtherWrite;

    /// <summary>Reads the secret.</summary>
    /// <param name="path">The file.</param>
    /// <param name="complaint">Why it cannot be used, and what to do; null when it can.</param>
    /// <returns>The secret; empty after a complaint.</returns>
    public static string Read(string path, out string? complaint)
    {
        complaint = null;
        try
        {
            if (!File.Exists(path))
            {
                complaint = $"{path} is not there, or may not be looked for: make it, readable by the account of the service only";
            }
            else if (!OperatingSystem.IsWindows() && (File.GetUnixFileMode(path) & Others) != 0)
            {
                complaint = $"{path} can be read or written by everybody on this machine: chmod o= {path}";
            }
            else if (File.ReadLines(path).FirstOrDefault()?.Trim() is { Length: > 0 } secret)
            {
                return secret;
            }
            else
            {
                complaint = $"{path} is empty: write the secret on its first line";
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            complaint = $"{path} cannot be read ({e.Message.TrimEnd('.')}): give it to the group of the service, chgrp rackcontroller "
                + path;
        }

        return "";
    }
}
