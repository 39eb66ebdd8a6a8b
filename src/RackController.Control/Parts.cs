using System.Collections.Immutable;
using RackController.Model;

namespace RackController.Control;

/// <summary>What a controller is made of, and how it is put together: the wiring of Control in one place.</summary>
internal sealed class Parts
{
    private readonly ImmutableArray<Interlock> interlocks;
    private int remembered;

    public Parts(Site site, Moment start, ControlMemory? before)
    {
        var memory = new MemoryReader(before, start);
        Clock = new ClockWatch(start);
        Desks = [.. site.Racks.Select(rack => new RackDesk(rack))];
        Areas = new Areas(site);
        Attention = new Attention(Areas);
        Validation = new Validation(site);
        var levels = ImmutableArray.CreateBuilder<SensorLevel>();
        Demands = [.. site.Racks.Select(rack => new RackDemand(site, rack.Id, memory, start, levels))];
        Currents = new LoadCurrents(site, Areas, start.Monotonic, levels);
        Senses = [.. site.Racks.Select(rack => new RackSenses(site, rack, start.Monotonic, levels))];
        ProofTests = new ProofTestLog(site, Areas, Demands[0].Clock, memory, start, levels);
        interlocks = CauseAndEffectTable.Build(new InterlockSite(site, start, levels));
        Interlocks = new InterlockPanel(site, interlocks, Areas);
        Admission = new Admission(site, Areas, start.Monotonic);
        Contactors = new Contactors(site, interlocks, Desks);
        Alarms = new AlarmPanel(site, interlocks);
        ProofTestDesk = new ProofTestDesk(ProofTests, Areas, interlocks);
        Desk = new OperatorDesk(site, Desks, Demands, Alarms, new LatchDesk(site, interlocks), ProofTestDesk);
        Levels =
        [
            .. site.Sensors.Where(sensor => !sensor.IsContact)
                .SelectMany(sensor => new SensorLevel[] { new(sensor.Id, sensor.PlausibleMin), new(sensor.Id, sensor.PlausibleMax) }),
            .. levels,
        ];
        Restore(memory, start);
    }

    public ClockWatch Clock { get; }

    public ImmutableArray<RackDesk> Desks { get; }

    public Areas Areas { get; }

    public Attention Attention { get; }

    public Validation Validation { get; }

    public ImmutableArray<RackDemand> Demands { get; }

    public LoadCurrents Currents { get; }

    public ImmutableArray<RackSenses> Senses { get; }

    public InterlockPanel Interlocks { get; }

    public Admission Admission { get; }

    public Contactors Contactors { get; }

    public AlarmPanel Alarms { get; }

    public ProofTestLog ProofTests { get; }

    public ProofTestDesk ProofTestDesk { get; }

    public OperatorDesk Desk { get; }

    public ImmutableArray<SensorLevel> Levels { get; }

    public long MemoryVersion
    {
        get
        {
            var sum = Alarms.MemoryVersion + ProofTests.MemoryVersion;
            foreach (var interlock in interlocks)
            {
                sum += interlock.MemoryVersion;
            }

            foreach (var desk in Desks)
            {
                sum += desk.MemoryVersion;
            }

            foreach (var demand in Demands)
            {
                sum += demand.MemoryVersion;
            }

            return sum;
        }
    }

    public ControlMemory Save(in Moment now)
    {
        var memory = new MemoryWriter(now, remembered);
        foreach (var interlock in interlocks)
        {
            interlock.Save(memory);
        }

        foreach (var desk in Desks)
        {
            desk.Save(memory);
        }

        foreach (var demand in Demands)
        {
            demand.Save(memory);
        }

        Alarms.Save(memory);
        ProofTests.Save(memory);
        remembered = memory.Count;
        return memory.ToMemory();
    }

    private void Restore(MemoryReader memory, Moment start)
    {
        foreach (var interlock in interlocks)
        {
            interlock.Restore(memory, start);
        }

        foreach (var desk in Desks)
        {
            desk.Restore(memory, start);
        }

        Alarms.Restore(memory, start);
    }
}
