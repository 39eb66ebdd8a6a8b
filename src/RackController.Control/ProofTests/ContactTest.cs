using NodaTime;
using RackController.Model;

namespace RackController.Control;

/// <summary>The proof test of a contact: brought to its harmful side and back, it must read both, and whatever it protects must
/// act. A contact that is at its harmful side already has only to come back.</summary>
internal static class ContactTest
{
    public static ProofTestItem Of(Site site, Sensor sensor)
    {
        var limits = LimitsOf(site, sensor);
        var (there, back) = Words(sensor.Kind);
        return new ProofTestItem(
            sensor.Name, KindOf(sensor.Kind), Place.Of(sensor), Interval(sensor.Kind, limits),
            new ProofTestPace(limits.TestStepWithin, limits.TestStepWithin),
            [
                new ProofTestStep(there) { Shows = Reads(sensor, sensor.HarmfulValue == 1), MustTrip = true },
                new ProofTestStep(back) { Shows = Reads(sensor, sensor.HarmfulValue == 0) },
            ])
        {
            Contact = sensor.Id,
        };
    }

    private static Func<Facts, bool> Reads(Sensor sensor, bool closed) =>
        closed ? facts => facts.IsClosed(sensor.Id) : facts => facts.IsOpen(sensor.Id);

    private static InterlockLimits LimitsOf(Site site, Sensor sensor) =>
        sensor.Rack is { } rack ? site[rack].Limits : CircuitTests.LimitsOf(site, sensor.Circuit!.Value);

    private static ProofTestKind KindOf(SensorKind kind) => kind switch
    {
        SensorKind.LeakRope => ProofTestKind.LeakRope,
        SensorKind.SupplySense => ProofTestKind.SupplySense,
        _ => ProofTestKind.FloatSwitch,
    };

    private static Duration Interval(SensorKind kind, InterlockLimits limits) => KindOf(kind) switch
    {
        ProofTestKind.LeakRope => limits.LeakRopeTestInterval,
        ProofTestKind.SupplySense => limits.SupplySenseTestInterval,
        _ => limits.FloatTestInterval,
    };

    private static (string There, string Back) Words(SensorKind kind) => kind switch
    {
        SensorKind.LeakRope => (
            "wet the rope until it reads wet, with the rack's plug pulled", "dry the rope until it reads dry"),
        SensorKind.SupplySense => ("open the breaker of the circuit", "close the breaker of the circuit again"),
        SensorKind.ReservoirLowFloat => (
            $"push the float down, or lift it out of the water, with {HandsInWords.Rod}, until it reads dry, and hold it there",
            "let the water carry the float until it reads wet"),
        _ => (
            $"lift the float with {HandsInWords.Rod}, until it reads wet, and hold it there", "let the float down until it reads dry"),
    };
}
