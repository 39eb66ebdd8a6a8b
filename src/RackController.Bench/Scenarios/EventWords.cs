using RackController.Bench.Binding;
using RackController.Control;
using RackController.Model;

namespace RackController.Bench;

/// <summary>What a scenario's own event does, in words for the log.</summary>
internal static class EventWords
{
    public static string Of(Site site, ScenarioEvent happening) => happening switch
    {
        RackFails fails => $"{FaultNames.Of(fails.Fault.Kind)} {FaultNames.Where(site, fails.Fault)}".Trim(),
        RackMends => "put right",
        PersonAsks asks => $"{asks.Request.By} asks: {RequestWords(asks.Request)}",
        ClockSteps steps => steps.By < NodaTime.Duration.Zero
            ? $"the clock is set back by {Spans.Words(-steps.By)}"
            : $"the clock is set ahead by {Spans.Words(steps.By)}",
        ClockSetRight => "the clock is set right and trusted",
        ClockLosesTrust => "nothing vouches for the clock any more",
        ControllerGoes => "the controller loses its power",
        ControllerComes { Wall: null } => "the controller boots",
        ControllerComes => "the controller boots with a clock that nothing vouches for",
        RoomChanges room => $"the room is at {room.AirC:0.#} C and {room.HumidityPercent:0.#} %",
        _ => throw new InvariantBrokenException("every kind of event has its words"),
    };

    private static string RequestWords(OperatorRequest request) => request switch
    {
        FloodNow => "flood now",
        Stop => "stop",
        Resume => "resume",
        SkipNextFlood => "skip the next flood",
        HoldForService hold => $"hold for service for {Spans.Words(hold.Length)}",
        EndServiceHold => "end the service hold",
        Acknowledge acknowledge => $"acknowledge {acknowledge.Alarm}",
        Shelve shelve => $"shelve {shelve.Alarm} for {Spans.Words(shelve.Length)}",
        Unshelve unshelve => $"take {unshelve.Alarm} off the shelf",
        SetAlarmOutOfService { OutOfService: true } service => $"take {service.Alarm} out of service",
        SetAlarmOutOfService service => $"put {service.Alarm} back into service",
        ResetLatch reset => $"reset {reset.Latch}",
        ConfirmReset confirm => $"confirm the reset of {confirm.Latch}",
        SetTierInUse { InUse: true } tier => $"tier {tier.TierNumber} into use",
        BeginProofTest test => $"begin the proof test of {test.Item}",
        AnswerProofTest { AsExpected: true } => "it is as it should be",
        AnswerProofTest => "it is not as it should be",
        AbandonProofTest => "abandon the proof test",
        SetTierInUse tier => $"tier {tier.TierNumber} out of use",
        _ => throw new InvariantBrokenException("every kind of request has its words"),
    };
}
