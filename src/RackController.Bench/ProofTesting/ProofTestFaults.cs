using System.Collections.Immutable;
using RackController.Bench.Binding;
using RackController.Control;
using RackController.Model;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>What each sort of proof test finds: the faults that a campaign injects, and that nothing else may show for months.</summary>
public static class ProofTestFaults
{
    private static readonly ImmutableArray<FaultKind> ofContacts =
    [
        FaultKind.FloatStuckWet, FaultKind.FloatStuckDry, FaultKind.FloatSlow, FaultKind.SensorDropout,
        FaultKind.SensorFrozen, FaultKind.SensorCorrupt,
    ];

    /// <summary>The faults that make a test fail. A slow contact is found where it is later than a step may take, and an offset current
    /// where it is larger than what the nameplate allows for.</summary>
    /// <param name="kind">What sort of test it is.</param>
    public static ImmutableArray<FaultKind> FoundBy(ProofTestKind kind) => kind switch
    {
        ProofTestKind.FloatSwitch or ProofTestKind.LeakRope or ProofTestKind.SupplySense => ofContacts,
        ProofTestKind.CurrentSensor =>
        [
            FaultKind.SensorOffset, FaultKind.SensorReadsZero, FaultKind.SensorDropout, FaultKind.SensorFrozen, FaultKind.SensorCorrupt,
        ],
        ProofTestKind.WiredFloat => [FaultKind.FloatCutoutStuck, FaultKind.FloatCutoutUnlatched],
        ProofTestKind.WiredTimeRelay => [FaultKind.TimeCutoutStuck],
        ProofTestKind.Relay => [FaultKind.RelayWelded, FaultKind.RelayOpen, FaultKind.LoadDead],
        _ => throw new InvariantBrokenException($"every proof test finds something, {kind} too"),
    };

    /// <summary>The same in the words of scenarios.</summary>
    /// <param name="kind">What sort of test it is.</param>
    public static string Words(ProofTestKind kind) => string.Join(", ", FoundBy(kind).Select(FaultNames.Of));
}
