using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using RackController.BareHost;

// What `tests/figures` measures the service beside: the least that a service with a page is on .NET's slim web host.
var builder = WebApplication.CreateSlimBuilder(args);
builder.Services.AddHostedService<TickingWorker>();
var app = builder.Build();
app.MapGet("/", context => context.Response.WriteAsync("nothing"));
await app.RunAsync();
