using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using NodaTime;
using RackController.Service;

namespace RackController.Page;

/// <summary>What the page proves itself by: the grower's certificate, or one that it makes and signs itself and keeps in the
/// state folder.</summary>
/// <param name="options">Where they are.</param>
/// <param name="clock">The time of day.</param>
public sealed class PageCertificate(PageOptions options, IClock clock)
{
    // Some browsers take none that lasts longer (Apple, from memory).
    private static readonly Duration lasts = Duration.FromDays(825);
    private static readonly Duration renewBefore = Duration.FromDays(30);

    private readonly string ownPath = Path.Combine(options.Folder.Path, "certificate.pem");
    private Instant renewAt = Instant.MaxValue;

    /// <summary>Whether it is the grower's, so that browsers may be told to insist on it.</summary>
    public bool IsGrowers => options.Certificate is not null;

    /// <summary>What changes when another is to be used: when files were replaced, or its own comes to its end.</summary>
    public string Stamp() => options.Certificate is { } files
        ? $"{TimeOf(files.Certificate)} {TimeOf(files.Key)}"
        : $"{TimeOf(ownPath)} {clock.GetCurrentInstant() >= renewAt}";

    /// <summary>The certificate with its key, first, and those that it hangs on.</summary>
    /// <exception cref="CouldNotRunException">The grower's cannot be used; in one line.</exception>
    /// <exception cref="IOException">Its own cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">Its own may not be written.</exception>
    public X509Certificate2Collection Load()
    {
        if (options.Certificate is { } files)
        {
            return Growers(files);
        }

        var own = ReadOwn();
        if (own is null || IsDue(own))
        {
            own?.Dispose();
            own = Make();
            PrivateFile.Write(ownPath, own.ExportCertificatePem() + "\n" + own.GetECDsaPrivateKey()!.ExportPkcs8PrivateKeyPem() + "\n");
        }

        renewAt = EndOf(own) - renewBefore;
        return [own];
    }

    /// <summary>The grower's certificate.</summary>
    /// <exception cref="CouldNotRunException">It cannot be used; in one line.</exception>
    internal static X509Certificate2Collection Growers(CertificateFiles files)
    {
        try
        {
            ArgumentNullException.ThrowIfNull(files);
            var chain = new X509Certificate2Collection();
            chain.ImportFromPemFile(files.Certificate);
            var first = X509Certificate2.CreateFromPemFile(files.Certificate, files.Key);
            return [first, .. chain.Skip(1)];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or CryptographicException or ArgumentException)
        {
            throw new CouldNotRunException(
                $"{files.Certificate} with {files.Key}: not a certificate with its key ({e.Message.TrimEnd('.')}): give both as PEM, "
                + "without a password");
        }
    }

    /// <summary>Whether the grower's certificate can be used.</summary>
    /// <param name="files">Where it is.</param>
    /// <exception cref="CouldNotRunException">It cannot be used; in one line.</exception>
    public static void Check(CertificateFiles files)
    {
        foreach (var part in Growers(files))
        {
            part.Dispose();
        }
    }

    /// <summary>The SHA-256 of a certificate, as browsers write it.</summary>
    public static string Fingerprint(X509Certificate2 certificate) =>
        string.Join(':', certificate.GetCertHash(HashAlgorithmName.SHA256).Select(part => part.ToString("X2", null)));

    private X509Certificate2 Make()
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest($"CN={OwnNames.Names[0]}", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        foreach (var name in OwnNames.Names.Append("localhost").Distinct())
        {
            names.AddDnsName(name);
        }

        foreach (var address in OwnNames.Addresses().Append(System.Net.IPAddress.Loopback).Append(System.Net.IPAddress.IPv6Loopback))
        {
            names.AddIpAddress(address);
        }

        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, critical: true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid("1.3.6.1.5.5.7.3.1")], critical: false));

        // From yesterday on: the clock of whoever looks may be behind ours.
        var begins = clock.GetCurrentInstant() - Duration.FromDays(1);
        return request.CreateSelfSigned(begins.ToDateTimeOffset(), (begins + lasts).ToDateTimeOffset());
    }

    // One that cannot be read is made anew: nobody but the page has a use for it.
    private X509Certificate2? ReadOwn()
    {
        try
        {
            return File.Exists(ownPath) ? X509Certificate2.CreateFromPemFile(ownPath) : null;
        }
        catch (Exception e) when (e is CryptographicException or IOException)
        {
            return null;
        }
    }

    private bool IsDue(X509Certificate2 own) =>
        clock.GetCurrentInstant() >= EndOf(own) - renewBefore
        || clock.GetCurrentInstant() < Instant.FromDateTimeUtc(own.NotBefore.ToUniversalTime());

    private static Instant EndOf(X509Certificate2 certificate) => Instant.FromDateTimeUtc(certificate.NotAfter.ToUniversalTime());

    private static long TimeOf(string path) => File.GetLastWriteTimeUtc(path).Ticks;
}
