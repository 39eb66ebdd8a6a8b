using NodaTime;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>Somebody who fills the reservoirs up once a day while trays are empty, as a grower does.</summary>
internal sealed class Refiller(Site site) : IVisitor
{
    private static readonly Duration daily = Duration.FromDays(1);
    private static readonly Duration atFour = Duration.FromHours(4);

    /// <inheritdoc/>
    public MonotonicTime ComesAt { get; private set; } = MonotonicTime.Zero + atFour;

    /// <inheritdoc/>
    public IReadOnlyList<ScenarioEvent> Visit(VirtualRun run)
    {
        ComesAt += daily;
        var deeds = new List<ScenarioEvent>();
        foreach (var rack in site.Racks)
        {
            var missingL = rack.Reservoir.NormalVolumeL - run.Plant.Racks[rack.Id.Index].ReservoirVolumeL;
            if (missingL > 0)
            {
                var fault = new Fault(FaultKind.ReservoirRefilled, run.Plant.Reached, MonotonicTime.Never)
                {
                    Rack = rack.Id,
                    Size = missingL,
                };
                run.Plant.Inject(fault);
                deeds.Add(new RackFails(run.Now.Elapsed, $"refill of {rack.Name}", fault));
            }
        }

        return deeds;
    }
}
