using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using NodaTime;
using RackController.Service;

namespace RackController.Page.Tests;

/// <summary>What the page proves itself by, and when it takes another.</summary>
public sealed class PageCertificateTests : IDisposable
{
    private static readonly IPEndPoint everywhere = new(IPAddress.Any, 0);

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("rackcontroller-page-");

    private CertificateFiles Growers => new(Path.Combine(folder.FullName, "site.pem"), Path.Combine(folder.FullName, "site.key"));

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task WithTheGrowersBrowsersAreToldToInsistOnIt()
    {
        var print = WriteGrowers("first.example");
        await using var served = await Household.ServedAsync(
            options => options with { Listen = everywhere, Certificate = Growers });

        using var guest = new Guest(AtThisMachine(served.Address));
        using var answer = await guest.Client.GetAsync("/sign-in");

        Assert.Equal(print, await PresentedAsync(served.Address));
        Assert.Equal("max-age=31536000", Assert.Single(answer.Headers.GetValues("Strict-Transport-Security")));
    }

    [Fact]
    public async Task AGrowersThatIsReplacedIsTakenWithoutARestart()
    {
        var first = WriteGrowers("first.example");
        await using var served = await Household.ServedAsync(
            options => options with { Listen = everywhere, Certificate = Growers });
        Assert.Equal(first, await PresentedAsync(served.Address));

        await PresentsAsync(served, WriteGrowers("second.example"));

        Assert.Null((await served.SeeAsync(_ => true)).Health.Fault);
    }

    [Fact]
    public async Task WhileTheNextCannotBeUsedThePageGoesOnWithTheOneItHas()
    {
        var first = WriteGrowers("first.example");
        await using var served = await Household.ServedAsync(
            options => options with { Listen = everywhere, Certificate = Growers });
        using var ada = new Guest(AtThisMachine(served.Address));
        await ada.SignInAsync(Household.Ada, Household.Password);

        await File.WriteAllTextAsync(Growers.Certificate, "renewed, but not written to its end");
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        while (!(await ada.Client.GetStringAsync("/events")).Contains("goes on with the certificate it has", StringComparison.Ordinal))
        {
            await Task.Delay(100, patience.Token);
        }

        Assert.Equal(first, await PresentedAsync(served.Address));
        await PresentsAsync(served, WriteGrowers("second.example"));
    }

    // Thirty days before its end, so that whoever comes once a month meets none that has run out.
    [Fact]
    public void ItsOwnIsMadeAnewBeforeItRunsOut()
    {
        var clock = new SetClock(Instant.FromUtc(2026, 6, 1, 12, 0));
        var certificate = new PageCertificate(new PageOptions(everywhere, "rack.yaml", new StateFolder(folder.FullName), 1), clock);
        var first = PageCertificate.Fingerprint(certificate.Load()[0]);
        var stamp = certificate.Stamp();

        clock.Now += Duration.FromDays(793);
        Assert.Equal(stamp, certificate.Stamp());
        Assert.Equal(first, PageCertificate.Fingerprint(certificate.Load()[0]));

        clock.Now += Duration.FromDays(2);
        Assert.NotEqual(stamp, certificate.Stamp());
        Assert.NotEqual(first, PageCertificate.Fingerprint(certificate.Load()[0]));
    }

    private string WriteGrowers(string name)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest($"CN={name}", key, HashAlgorithmName.SHA256);
        using var made = request.CreateSelfSigned(DateTimeOffset.UtcNow.AddDays(-1), DateTimeOffset.UtcNow.AddDays(90));
        File.WriteAllText(Growers.Key, key.ExportPkcs8PrivateKeyPem());
        File.WriteAllText(Growers.Certificate, made.ExportCertificatePem());
        return PageCertificate.Fingerprint(made);
    }

    private static async Task PresentsAsync(ServedRack served, string print)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        while (await PresentedAsync(served.Address) != print)
        {
            await Task.Delay(100, patience.Token);
        }
    }

    private static Uri AtThisMachine(Uri address) => new($"https://127.0.0.1:{address.Port}/");

    /// <summary>The fingerprint of what is presented; null while nobody listens.</summary>
    private static async Task<string?> PresentedAsync(Uri address)
    {
        try
        {
            using var client = new TcpClient();
            await client.ConnectAsync(IPAddress.Loopback, address.Port);
            await using var stream = new SslStream(client.GetStream(), false, (_, certificate, _, _) => certificate is not null);
            await stream.AuthenticateAsClientAsync("127.0.0.1");
            using var presented = new X509Certificate2(stream.RemoteCertificate!);
            return PageCertificate.Fingerprint(presented);
        }
        catch (Exception e) when (e is SocketException or IOException)
        {
            return null;
        }
    }
}
