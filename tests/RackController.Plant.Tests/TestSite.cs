using NodaTime;
using RackController.Model;
using RackController.Testing;

namespace RackController.Plant.Tests;

/// <summary>A simulated site with one rack, driven by hand.</summary>
internal sealed class TestSite
{
    public TestSite(int tiers, PlantStart? start = null, Site? site = null)
    {
        Site = site ?? Sites.OneRack(tiers);
        Plant = new SimulatedSite(Site, start ?? PlantStart.Default);
        Commands = new RelayCommands(Site);
        Readings = new Readings(Site);
    }

    public Site Site { get; }

    public SimulatedSite Plant { get; }

    public RelayCommands Commands { get; }

    public Readings Readings { get; }

    public RackTruth Truth => Plant.Racks[0];

    public MonotonicTime Now => Plant.Reached;

    public double Seconds => Now.Nanoseconds / 1e9;

    public MonotonicTime After(double seconds) => Now + Duration.FromSeconds(seconds);

    /// <summary>Opens every tier valve and starts the pump.</summary>
    public void Flood()
    {
        foreach (var load in Site.Loads.Where(load => load.Kind is LoadKind.Pump or LoadKind.Valve))
        {
            Commands[load.Id] = SwitchState.On;
        }

        Assert.True(Plant.Write(Now, Commands).IsOk);
    }

    /// <summary>Puts every load in its safe state.</summary>
    public void Stop()
    {
        Commands.CopyFrom(new RelayCommands(Site));
        Assert.True(Plant.Write(Now, Commands).IsOk);
    }

    public void Switch(string load, bool on)
    {
        Commands[Site.LoadNamed(load)] = on ? SwitchState.On : SwitchState.Off;
        Assert.True(Plant.Write(Now, Commands).IsOk);
    }

    public void To(double seconds) => Plant.AdvanceTo(new MonotonicTime((long)Math.Round(seconds * 1e9)));

    public LoadTruth Load(string name) => Plant.Loads[Site.LoadNamed(name).Index];

    public Reading Reading(string sensor)
    {
        Assert.True(Plant.Read(Now, Readings).IsOk);
        return Readings[Site.SensorNamed(sensor)];
    }

    public void Inject(FaultKind kind, double forSeconds, Func<Fault, Fault> place) =>
        Plant.Inject(place(new Fault(kind, Now, After(forSeconds))));
}
