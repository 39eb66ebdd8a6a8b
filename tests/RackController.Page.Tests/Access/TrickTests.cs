using System.Net;
using System.Net.Sockets;
using System.Text;
using RackController.Model;
using RackController.RackFile;
using RackController.Testing;

namespace RackController.Page.Tests;

/// <summary>Addresses and names that are not what they seem.</summary>
public sealed class TrickTests
{
    private const string Script = "<script>alert(1)</script>";
    private const string Name = Script + "\" onload='alert(2)";

    [Theory]
    [InlineData("/../etc/passwd", 404)]
    [InlineData("/files/../../etc/passwd", 404)]
    [InlineData("/files/%2e%2e/%2e%2e/etc/passwd", 404)]
    [InlineData("/files/..%2f..%2fetc/passwd", 404)]
    [InlineData("/files/page.css%00", 400)]
    [InlineData("//people", 404)]
    [InlineData("/people/", 401)]
    [InlineData("/PEOPLE", 401)]
    [InlineData("/./people", 401)]
    [InlineData("/files/../people", 401)]
    [InlineData("/sign-in/../people", 401)]
    [InlineData("/people;/sign-in", 404)]
    [InlineData("/people%2f", 404)]
    [InlineData("people", 405)]
    [InlineData("http://elsewhere.example/people", 400)]
    [InlineData("*", 405)]
    public async Task NoPathLeadsAroundTheDoor(string path, int code)
    {
        await using var served = await Household.ServedAsync();

        Assert.Equal(code, await CodeAsync(served.Address, path));
    }

    [Fact]
    public async Task AnEndlessPathIsRefused()
    {
        await using var served = await Household.ServedAsync();

        Assert.Equal(414, await CodeAsync(served.Address, "/" + new string('a', 100_000)));
    }

    [Fact]
    public async Task ANameIsAlwaysANameAndNeverMarkup()
    {
        // The reader of rack files refuses such names; the page does not rely on it.
        var path = ShippedFiles.PathTo("config/demo-four-tier.yaml");
        var read = Assert.IsType<Site>(RackFileReader.Read(path).Site);
        var site = read with
        {
            Name = Name,
            Racks = [.. read.Racks.Select(rack => rack with { Name = Name })],
            Circuits = [.. read.Circuits.Select(circuit => circuit with { Name = Script })],
        };
        await using var served = await ServedRack.StartAsync(site, path, prepare: folder => Assert.Null(
            new People(folder).Add(Name[..PasswordRules.MostNameLength], Role.Configure, PasswordHash.Of(Household.Password))));
        using var guest = new Guest(served.Address);
        guest.Client.DefaultRequestHeaders.UserAgent.Clear();
        guest.Client.DefaultRequestHeaders.TryAddWithoutValidation("User-Agent", Script + " Firefox/1");
        Assert.Equal(HttpStatusCode.SeeOther, await guest.SignInAsync(Name[..PasswordRules.MostNameLength], Household.Password));
        using var token = await guest.PostAsync("/people/tokens/add", ("name", Script), ("role", "view"));
        Assert.Equal(HttpStatusCode.OK, token.StatusCode);

        foreach (var address in new[] { "/", "/schedule", "/people", "/account", "/racks/0/flood", "/racks/0/hold" })
        {
            var html = await guest.Client.GetStringAsync(address);
            Assert.DoesNotContain("<script>alert", html, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("\" onload='", html, StringComparison.Ordinal);
            Assert.Contains("script", html, StringComparison.Ordinal);
        }

        Assert.DoesNotContain("<script>alert", await token.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    // As it stands, since clients put paths in order before they send them.
    private static async Task<int> CodeAsync(Uri address, string path)
    {
        using var client = new TcpClient();
        await client.ConnectAsync(address.Host, address.Port);
        await client.GetStream().WriteAsync(
            Encoding.ASCII.GetBytes($"GET {path} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"));
        using var reader = new StreamReader(client.GetStream());
        var line = await reader.ReadLineAsync();
        return int.Parse(line!.Split(' ')[1], System.Globalization.CultureInfo.InvariantCulture);
    }
}
