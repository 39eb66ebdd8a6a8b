namespace RackController.Page.Tests;

/// <summary>Whether nobody but the account of the service may read a file.</summary>
internal static class OwnerOnly
{
    public static bool Reads(string path) =>
        OperatingSystem.IsWindows() || File.GetUnixFileMode(path) == (UnixFileMode.UserRead | UnixFileMode.UserWrite);
}
