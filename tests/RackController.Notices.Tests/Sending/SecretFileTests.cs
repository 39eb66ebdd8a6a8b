using System.Runtime.Versioning;

namespace RackController.Notices.Tests;

[SupportedOSPlatform("linux")]
public sealed class SecretFileTests : IDisposable
{
    private readonly string path = Path.GetTempFileName();

    public void Dispose() => File.Delete(path);

    [Fact]
    public void TheSecretIsOnItsFirstLine()
    {
        File.WriteAllText(path, "  four damp socks \nand a comment\n");
        File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.GroupRead);

        Assert.Equal("four damp socks", SecretFile.Read(path, out var complaint));
        Assert.Null(complaint);
    }

    [Theory]
    [InlineData(UnixFileMode.OtherRead)]
    [InlineData(UnixFileMode.OtherWrite)]
    public void WhatEverybodyCanReadIsNoSecret(UnixFileMode mode)
    {
        File.WriteAllText(path, "four damp socks");
        File.SetUnixFileMode(path, UnixFileMode.UserRead | mode);

        Assert.Equal("", SecretFile.Read(path, out var complaint));
        Assert.Contains("chmod o=", complaint, StringComparison.Ordinal);
    }

    [Fact]
    public void AFileThatIsEmptyOrNotThereIsNamed()
    {
        File.SetUnixFileMode(path, UnixFileMode.UserRead);
        SecretFile.Read(path, out var empty);
        SecretFile.Read(path + "-not-there", out var missing);

        Assert.Contains("is empty", empty, StringComparison.Ordinal);
        Assert.Contains("is not there", missing, StringComparison.Ordinal);
    }
}
