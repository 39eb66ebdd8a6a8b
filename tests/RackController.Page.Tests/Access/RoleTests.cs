using System.Net;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Patterns;
using Microsoft.Extensions.DependencyInjection;

namespace RackController.Page.Tests;

/// <summary>Every address of the page lets in whom it should, and nobody else.</summary>
public sealed class RoleTests : IAsyncLifetime
{
    private const string Nobody = "nobody";
    private static readonly string[] everybody = [Nobody, Household.Cleo, Household.Ben, Household.Ada];

    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await Household.ServedAsync();

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Fact]
    public async Task EveryAddressLetsInWhomItShould()
    {
        using var access = new AccessParts(served.Rack, served.State);
        await using var app = Build(access);
        var doorman = new Doorman(access);
        var cookies = everybody[1..].ToDictionary(
            name => name, name => access.Sessions.Begin(access.People.Find(name)!, "a test", "here"));
        var wrong = new List<string>();
        foreach (var endpoint in ((IEndpointRouteBuilder)app).DataSources.SelectMany(source => source.Endpoints).Cast<RouteEndpoint>())
        {
            var method = endpoint.Metadata.GetRequiredMetadata<HttpMethodMetadata>().HttpMethods.Single();
            var address = endpoint.RoutePattern.RawText!;
            foreach (var name in everybody)
            {
                var isLetIn = await IsLetInAsync(doorman, endpoint, method, cookies.GetValueOrDefault(name));
                if (isLetIn != Array.IndexOf(everybody, name) >= Array.IndexOf(everybody, Least(method, address)))
                {
                    wrong.Add($"{method} {address}: {name} {(isLetIn ? "is let in" : "is turned away")}");
                }
            }
        }

        Assert.Empty(wrong);
    }

    [Fact]
    public async Task EveryAddressForProgramsIsDescribed()
    {
        using var access = new AccessParts(served.Rack, served.State);
        await using var app = Build(access);
        var described = JsonNode.Parse(await served.Client.GetStringAsync("/api/openapi.json"))!["paths"]!.AsObject();

        var forgotten = ((IEndpointRouteBuilder)app).DataSources.SelectMany(source => source.Endpoints).OfType<RouteEndpoint>()
            .Select(endpoint => endpoint.RoutePattern.RawText!)
            .Where(address => address.StartsWith("/api/", StringComparison.Ordinal) && address != "/api/openapi.json")
            .Where(address => !described.ContainsKey(address));
        Assert.Empty(forgotten);
    }

    [Fact]
    public async Task WhatSaysNotWhomItLetsInServesNobody()
    {
        using var access = new AccessParts(served.Rack, served.State);
        var forgotten = new RouteEndpoint(_ => Task.CompletedTask, RoutePatternFactory.Parse("/new"), 0, null, null);
        var cookie = access.Sessions.Begin(access.People.Find(Household.Ada)!, "a test", "here");

        Assert.False(await IsLetInAsync(new Doorman(access), forgotten, "GET", cookie));
    }

    // Who may do what, written down a second time and by address, so that a slip in one place shows.
    private static string Least(string method, string address) => (method, address.Split('/')[1], address) switch
    {
        (_, "files" or "health" or "sign-in", _) or (_, _, "/api/openapi.json") => Nobody,
        ("POST", _, _) when address.EndsWith("/stop", StringComparison.Ordinal) => Nobody,
        ("GET", "" or "live" or "metrics" or "account" or "history" or "events" or "floods" or "tune" or "batches.csv", _) =>
            Household.Cleo,
        ("GET", "history.csv" or "events.csv" or "floods.csv", _) => Household.Cleo,
        ("GET", _, "/api/status" or "/api/events" or "/schedule" or "/alarms" or "/proof-tests" or "/notices") => Household.Cleo,
        ("GET", _, "/batches" or "/batches/one" or "/batches/records.csv" or "/api/batches" or "/api/batches/one") => Household.Cleo,
        ("GET", _, "/upkeep" or "/api/upkeep") => Household.Cleo,
        (_, "upkeep", _) or ("POST", _, "/api/upkeep/done") => Household.Ben,
        ("POST", _, "/batches/draft") => Household.Ada,
        ("POST", "account" or "sign-out", _) or ("GET", _, "/api/tune" or "/api/tune/floods") => Household.Cleo,
        ("POST", _, "/tune/fit" or "/api/tune") => Household.Ben,
        ("POST", _, "/tune/draft" or "/api/tune/draft") => Household.Ada,
        (_, "racks" or "alarms" or "proof-tests" or "notices" or "batches", _)
            or ("POST", _, "/api/ask" or "/api/notices/test" or "/api/batches/entries" or "/api/batches/plan") => Household.Ben,
        ("GET", "api", "/api/history" or "/api/floods" or "/api/notices" or "/api/past-events" or "/api/alarms") => Household.Cleo,
        ("GET", _, "/api/rack-file") => Household.Cleo,
        (_, "schedule" or "people", _) or (_, _, "/api/rack-file/draft" or "/api/rack-file/apply" or "/api/rack-file/discard") =>
            Household.Ada,
        _ => throw new InvalidOperationException($"{method} {address} is new: say here who may"),
    };

    private static async Task<bool> IsLetInAsync(Doorman doorman, Endpoint endpoint, string method, string? cookie)
    {
        var context = new DefaultHttpContext();
        context.SetEndpoint(endpoint);
        context.Request.Method = method;
        context.Request.Host = new HostString("localhost");
        context.Request.Path = ((RouteEndpoint)endpoint).RoutePattern.RawText;
        context.Connection.RemoteIpAddress = IPAddress.Loopback;
        if (cookie is not null)
        {
            context.Request.Headers.Cookie = $"session={cookie}";
            context.Request.Headers[Doorman.FormHeader] = Secret.FormToken(cookie);
        }

        var isLetIn = false;
        await doorman.AdmitAsync(context, _ =>
        {
            isLetIn = true;
            return Task.CompletedTask;
        });
        return isLetIn;
    }

    private WebApplication Build(AccessParts access)
    {
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder.Services.AddRoutingCore();
        builder.WebHost.UseKestrelCore();
        var app = builder.Build();
        var options = new PageOptions(new IPEndPoint(IPAddress.Loopback, 0), served.RackFile, served.State, 1);
        PageRoutes.Map(app, options, access, new ServedAt([], [], null), CancellationToken.None);
        return app;
    }
}
