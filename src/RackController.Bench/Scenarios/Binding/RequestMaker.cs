using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.RackFile.Binding.Kinds;

namespace RackController.Bench.Binding;

/// <summary>What a person may ask for in a scenario.</summary>
internal enum RequestKind
{
    FloodNow,
    Stop,
    Resume,
    SkipNextFlood,
    Hold,
    EndHold,
    Acknowledge,
    Shelve,
    Unshelve,
    AlarmOutOfService,
    AlarmInService,
    Reset,
    ConfirmReset,
    TierInUse,
    TierOutOfUse,
    BeginProofTest,
    SeenInProofTest,
    NotSeenInProofTest,
    AbandonProofTest,
}

/// <summary>Makes requests from the words of a scenario.</summary>
internal static class RequestMaker
{
    private static readonly (string Word, RequestKind Kind)[] Words =
    [
        ("flood-now", RequestKind.FloodNow),
        ("stop", RequestKind.Stop),
        ("resume", RequestKind.Resume),
        ("skip-next-flood", RequestKind.SkipNextFlood),
        ("hold", RequestKind.Hold),
        ("end-hold", RequestKind.EndHold),
        ("acknowledge", RequestKind.Acknowledge),
        ("shelve", RequestKind.Shelve),
        ("unshelve", RequestKind.Unshelve),
        ("alarm-out-of-service", RequestKind.AlarmOutOfService),
        ("alarm-in-service", RequestKind.AlarmInService),
        ("reset", RequestKind.Reset),
        ("confirm-reset", RequestKind.ConfirmReset),
        ("tier-in-use", RequestKind.TierInUse),
        ("tier-out-of-use", RequestKind.TierOutOfUse),
        ("begin-proof-test", RequestKind.BeginProofTest),
        ("seen-in-proof-test", RequestKind.SeenInProofTest),
        ("not-seen-in-proof-test", RequestKind.NotSeenInProofTest),
        ("abandon-proof-test", RequestKind.AbandonProofTest),
    ];

    public static ChoiceKind<RequestKind> Kinds { get; } = new([.. Words]);

    public static string Word(RequestKind kind) => Words.First(one => one.Kind == kind).Word;

    /// <summary>The kind of a request.</summary>
    public static RequestKind KindOf(OperatorRequest request) => request switch
    {
        FloodNow => RequestKind.FloodNow,
        Stop => RequestKind.Stop,
        Resume => RequestKind.Resume,
        SkipNextFlood => RequestKind.SkipNextFlood,
        HoldForService => RequestKind.Hold,
        EndServiceHold => RequestKind.EndHold,
        Acknowledge => RequestKind.Acknowledge,
        Shelve => RequestKind.Shelve,
        Unshelve => RequestKind.Unshelve,
        SetAlarmOutOfService { OutOfService: true } => RequestKind.AlarmOutOfService,
        SetAlarmOutOfService => RequestKind.AlarmInService,
        ResetLatch => RequestKind.Reset,
        ConfirmReset => RequestKind.ConfirmReset,
        SetTierInUse { InUse: true } => RequestKind.TierInUse,
        SetTierInUse => RequestKind.TierOutOfUse,
        BeginProofTest => RequestKind.BeginProofTest,
        AnswerProofTest { AsExpected: true } => RequestKind.SeenInProofTest,
        AnswerProofTest => RequestKind.NotSeenInProofTest,
        AbandonProofTest => RequestKind.AbandonProofTest,
        _ => throw new InvariantBrokenException($"every request has its word, {request.GetType().Name} too"),
    };

    /// <summary>What a request must say, as advice.</summary>
    public static string Needs(RequestKind kind) => kind switch
    {
        RequestKind.Hold => "give `rack` and `for`",
        RequestKind.Shelve => "give `alarm` and `for`",
        RequestKind.Acknowledge or RequestKind.Reset or RequestKind.ConfirmReset
            or RequestKind.Unshelve or RequestKind.AlarmOutOfService or RequestKind.AlarmInService => "give `alarm`",
        RequestKind.TierInUse or RequestKind.TierOutOfUse => "give `tier`",
        RequestKind.BeginProofTest => "give `sensor` or `load`",
        RequestKind.FloodNow or RequestKind.SkipNextFlood or RequestKind.EndHold => "give `rack`",
        _ => throw new InvariantBrokenException($"{kind} needs no more than who asks"),
    };

    /// <summary>The request; null when something that it needs is missing.</summary>
    public static OperatorRequest? Make(
        RequestKind kind, string by, RackId? rack, TierPlace? tier, string? alarm, Duration? length, string? item) =>
        kind switch
        {
            RequestKind.FloodNow when rack is { } which => new FloodNow(by, which),
            RequestKind.Stop => new Stop(by, rack),
            RequestKind.Resume => new Resume(by, rack),
            RequestKind.SkipNextFlood when rack is { } which => new SkipNextFlood(by, which),
            RequestKind.Hold when rack is { } which && length is { } lasts => new HoldForService(by, which, lasts),
            RequestKind.EndHold when rack is { } which => new EndServiceHold(by, which),
            RequestKind.Acknowledge when alarm is not null => new Acknowledge(by, alarm),
            RequestKind.Shelve when alarm is not null && length is { } lasts => new Shelve(by, alarm, lasts),
            RequestKind.Unshelve when alarm is not null => new Unshelve(by, alarm),
            RequestKind.AlarmOutOfService when alarm is not null => new SetAlarmOutOfService(by, alarm, true),
            RequestKind.AlarmInService when alarm is not null => new SetAlarmOutOfService(by, alarm, false),
            RequestKind.Reset when alarm is not null => new ResetLatch(by, alarm),
            RequestKind.ConfirmReset when alarm is not null => new ConfirmReset(by, alarm),
            RequestKind.TierInUse when tier is not null => new SetTierInUse(by, tier.Rack, tier.Number, true),
            RequestKind.TierOutOfUse when tier is not null => new SetTierInUse(by, tier.Rack, tier.Number, false),
            RequestKind.BeginProofTest when item is not null => new BeginProofTest(by, item),
            RequestKind.SeenInProofTest => new AnswerProofTest(by, AsExpected: true),
            RequestKind.NotSeenInProofTest => new AnswerProofTest(by, AsExpected: false),
            RequestKind.AbandonProofTest => new AbandonProofTest(by),
            _ => null,
        };
}
