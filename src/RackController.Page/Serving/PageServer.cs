using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using RackController.Service;

namespace RackController.Page;

/// <summary>Serves the page of a running rack. It only looks and asks: whatever becomes of it, the rack is driven.</summary>
/// <param name="options">Where and from what.</param>
public sealed class PageServer(PageOptions options)
{
    // Requests for the start and a picture of a large site are a few kilobytes.
    private const long MostBodyBytes = 256 * 1024;
    private static readonly TimeSpan StopWithin = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan HeadersWithin = TimeSpan.FromSeconds(10);

    /// <summary>Where it is served; null while it is not.</summary>
    public Uri? Address { get; private set; }

    /// <summary>Serves until the end is asked for.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="served">Called once the page can be reached.</param>
    /// <param name="end">Asks for the end.</param>
    /// <exception cref="IOException">The address cannot be listened at.</exception>
    public async Task ServeAsync(IServedRack rack, Action served, CancellationToken end)
    {
        ArgumentNullException.ThrowIfNull(rack);
        ArgumentNullException.ThrowIfNull(served);
        await using var app = Build(rack, end);
        await app.StartAsync(end).ConfigureAwait(false);
        Address = new Uri(app.Urls.First());
        served();
        await app.WaitForShutdownAsync(end).ConfigureAwait(false);
    }

    private WebApplication Build(IServedRack rack, CancellationToken end)
    {
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder.Services.AddRoutingCore();
        builder.Services.AddSingleton<IHostLifetime, EndedFromOutside>();
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = StopWithin);
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = MostBodyBytes;
            kestrel.Limits.RequestHeadersTimeout = HeadersWithin;
            kestrel.Listen(options.Listen);
        });
        var app = builder.Build();
        app.UseRouting();
        app.Use(SecurityHeaders.AddAsync);
        app.Use(Doorman.AdmitAsync);
        PageRoutes.Map(app, rack, options, end);
        return app;
    }

    /// <summary>Signals are for whoever drives the rack.</summary>
    private sealed class EndedFromOutside : IHostLifetime
    {
        public Task WaitForStartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
    }
}
