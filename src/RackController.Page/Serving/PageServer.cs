using System.Collections.Immutable;
using System.Security.Cryptography.X509Certificates;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.ResponseCompression;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Options;
using NodaTime;
using RackController.Service;

namespace RackController.Page;

/// <summary>Serves the page of a running rack. It only looks and asks: whatever becomes of it, the rack is driven.</summary>
/// <param name="options">Where and from what.</param>
public sealed class PageServer(PageOptions options)
{
    private static readonly TimeSpan StopWithin = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan LookEvery = TimeSpan.FromSeconds(10);

    private readonly PageCertificate certificate = new(options, SystemClock.Instance);

    /// <summary>Where it is served; null while it is not.</summary>
    public Uri? Address { get; private set; }

    /// <summary>Serves until the end is asked for. Once the first person is set up, or the last one removed, it goes on
    /// elsewhere.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="served">Called once the page can be reached.</param>
    /// <param name="end">Asks for the end.</param>
    /// <exception cref="IOException">The address cannot be listened at.</exception>
    /// <exception cref="CouldNotRunException">The grower's certificate cannot be used.</exception>
    public async Task ServeAsync(IServedRack rack, Action served, CancellationToken end)
    {
        ArgumentNullException.ThrowIfNull(rack);
        ArgumentNullException.ThrowIfNull(served);
        using var access = new AccessParts(rack, options.Folder);
        while (!end.IsCancellationRequested)
        {
            using var moves = CancellationTokenSource.CreateLinkedTokenSource(end);
            var spots = ListenPlan.Of(options, !access.People.AreNone);
            var chain = spots.Any(spot => spot.IsSecure) ? certificate.Load() : [];
            var stamp = certificate.Stamp();
            await using var app = Build(access, spots, chain, moves.Token);
            if (!spots.IsEmpty)
            {
                await BindFaults.ToldAsync(() => app.StartAsync(end), spots[0].At.Port).ConfigureAwait(false);
                Address = AddressOf(app, spots[0]);
            }

            Tell(rack, spots, chain, !access.People.AreNone);
            served();
            try
            {
                while (spots.SequenceEqual(ListenPlan.Of(options, !access.People.AreNone))
                    && !(chain.Count > 0 && IsRenewed(rack, ref stamp)))
                {
                    await Task.Delay(LookEvery, end).ConfigureAwait(false);
                }
            }
            finally
            {
                await moves.CancelAsync().ConfigureAwait(false);
                await StopAsync(app).ConfigureAwait(false);
            }
        }
    }

    // At the end too, whoever asked before it has the answer: the request may be the one that brought the end about.
    private static async Task StopAsync(WebApplication app)
    {
        using var patience = new CancellationTokenSource(StopWithin);
        await app.StopAsync(patience.Token).ConfigureAwait(false);
    }

    /// <summary>Whether there is another certificate that can be used. One that is half written, or has come without its key so far, is
    /// told, and the page goes on with the one it has.</summary>
    private bool IsRenewed(IServedRack rack, ref string stamp)
    {
        var now = certificate.Stamp();
        if (now == stamp)
        {
            return false;
        }

        stamp = now;
        try
        {
            foreach (var part in certificate.Load())
            {
                part.Dispose();
            }

            return true;
        }
        catch (Exception e) when (e is CouldNotRunException or IOException or UnauthorizedAccessException)
        {
            rack.Record("the page goes on with the certificate it has", $"another cannot be used: {e.Message}");
            return false;
        }
    }

    private static void Tell(
        IServedRack rack, ImmutableArray<ListenSpot> spots, X509Certificate2Collection chain, bool isAnybodyKnown)
    {
        var places = spots.IsEmpty ? "nowhere" : string.Join(", ", spots.SelectMany(spot => OwnNames.Links(spot)));
        var why = chain.Count > 0 ? $"somebody is set up; its certificate has the SHA-256 {PageCertificate.Fingerprint(chain[0])}"
            : isAnybodyKnown ? "it was asked for at this machine"
            : "nobody is set up yet, so it is for this machine only until a first person has a password";
        rack.Record($"page served at {places}", why);
    }

    private WebApplication Build(
        AccessParts access, ImmutableArray<ListenSpot> spots, X509Certificate2Collection chain, CancellationToken end)
    {
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder.Services.AddRoutingCore();
        builder.Services.AddSingleton<IHostLifetime, EndedFromOutside>();
        builder.Services.AddResponseCompression(Compress);
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = StopWithin);
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel => Listening.Configure(kestrel, spots, chain));
        var app = builder.Build();
        app.UseResponseCompression();
        app.Use(new Faults(access.Rack).AnswerForAsync);
        app.UseRouting();
        app.Use(SecurityHeaders.AddAsync);
        if (chain.Count > 0 && certificate.IsGrowers)
        {
            app.Use(SecurityHeaders.InsistOnHttpsAsync);
        }

        var doorman = new Doorman(access);
        app.Use(new RequestPace(TimeProvider.System).AdmitAsync);
        app.Use(doorman.AdmitAsync);
        app.Use(new Streams(doorman).AdmitAsync);
        PageRoutes.Map(app, options, access, ServedAtOf(spots, chain), end);
        return app;
    }

    // Over HTTPS too: a page gives its secrets away by its length only to whoever can have it asked for with a session, and the cookie of
    // one never comes along from another site (SameSite=Strict). Streams are left as they are.
    private static void Compress(ResponseCompressionOptions compression)
    {
        compression.EnableForHttps = true;
        compression.Providers.Add(new GzipCompressionProvider(Options.Create(new GzipCompressionProviderOptions())));
        compression.MimeTypes = ["text/html", "text/css", "text/javascript", "text/csv", "text/plain", "application/json", "image/svg+xml"];
    }

    private ServedAt ServedAtOf(ImmutableArray<ListenSpot> spots, X509Certificate2Collection chain) => new(
        [.. spots.SelectMany(spot => OwnNames.Links(spot))],
        [.. ListenPlan.Of(options, isAnybodyKnown: true).SelectMany(spot => OwnNames.Links(spot))],
        chain.Count > 0 ? PageCertificate.Fingerprint(chain[0]) : null);

    // With port 0 only the server knows which one it was given.
    private static Uri AddressOf(WebApplication app, ListenSpot spot)
    {
        var bound = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault();
        return spot.Socket is null && Uri.TryCreate(bound, UriKind.Absolute, out var address) ? address : new Uri(OwnNames.Links(spot)[0]);
    }

    /// <summary>Signals are for whoever drives the rack.</summary>
    private sealed class EndedFromOutside : IHostLifetime
    {
        public Task WaitForStartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
    }
}
