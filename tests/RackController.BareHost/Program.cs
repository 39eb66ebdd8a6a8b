using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using RackController.BareHost;

// What `tests/figures` measures the service beside: the least that a service on .NET's generic host is.
var builder = Host.CreateApplicationBuilder(args);
builder.Services.AddHostedService<TickingWorker>();
await builder.Build().RunAsync();
