using RackController.Model;

namespace RackController.Control;

/// <summary>Puts what people ask for into bytes and gets it back. A number, once given, keeps its meaning.</summary>
internal static class RequestCode
{
    /// <summary>Puts down a request. Of one that has no number here nothing but that is put down, and a replay says so.</summary>
    public static void Put(OperatorRequest request, ByteWriter to)
    {
        to.Put(NumberOf(request));
        to.Put(request.By);
        switch (request)
        {
            case FloodNow ask:
                to.Put((ulong)ask.Rack.Index);
                break;
            case Stop ask:
                PutAnyRack(ask.Rack, to);
                break;
            case Resume ask:
                PutAnyRack(ask.Rack, to);
                break;
            case SkipNextFlood ask:
                to.Put((ulong)ask.Rack.Index);
                break;
            case HoldForService ask:
                to.Put((ulong)ask.Rack.Index);
                to.Put(ask.Length);
                break;
            case EndServiceHold ask:
                to.Put((ulong)ask.Rack.Index);
                break;
            case Acknowledge ask:
                to.Put(ask.Alarm);
                break;
            case Shelve ask:
                to.Put(ask.Alarm);
                to.Put(ask.Length);
                break;
            case Unshelve ask:
                to.Put(ask.Alarm);
                break;
            case SetAlarmOutOfService ask:
                to.Put(ask.Alarm);
                to.Put(ask.OutOfService ? (byte)1 : (byte)0);
                break;
            case ResetLatch ask:
                to.Put(ask.Latch);
                break;
            case ConfirmReset ask:
                to.Put(ask.Latch);
                break;
            case SetTierInUse ask:
                to.Put((ulong)ask.Rack.Index);
                to.Put((long)ask.TierNumber);
                to.Put(ask.InUse ? (byte)1 : (byte)0);
                break;
            case BeginProofTest ask:
                to.Put(ask.Item);
                break;
            case AnswerProofTest ask:
                to.Put(ask.AsExpected ? (byte)1 : (byte)0);
                break;
            case AbandonProofTest:
                break;
        }
    }

    /// <summary>Gets a request back.</summary>
    /// <exception cref="FormatException">It is none that this program knows.</exception>
    public static OperatorRequest Get(ref ByteReader from)
    {
        var number = from.Byte();
        var by = from.Text();
        return number switch
        {
            1 => new FloodNow(by, Rack(ref from)),
            2 => new Stop(by, AnyRack(ref from)),
            3 => new Resume(by, AnyRack(ref from)),
            4 => new SkipNextFlood(by, Rack(ref from)),
            5 => new HoldForService(by, Rack(ref from), from.Length()),
            6 => new EndServiceHold(by, Rack(ref from)),
            7 => new Acknowledge(by, from.Text()),
            8 => new Shelve(by, from.Text(), from.Length()),
            9 => new SetAlarmOutOfService(by, from.Text(), from.Byte() != 0),
            10 => new ResetLatch(by, from.Text()),
            11 => new ConfirmReset(by, from.Text()),
            12 => new SetTierInUse(by, Rack(ref from), Tier(from.Signed()), from.Byte() != 0),
            13 => new BeginProofTest(by, from.Text()),
            14 => new AnswerProofTest(by, from.Byte() != 0),
            15 => new AbandonProofTest(by),
            16 => new Unshelve(by, from.Text()),
            _ => throw new FormatException("somebody asked for something that this program does not know"),
        };
    }

    private static byte NumberOf(OperatorRequest request) => request switch
    {
        FloodNow => 1,
        Stop => 2,
        Resume => 3,
        SkipNextFlood => 4,
        HoldForService => 5,
        EndServiceHold => 6,
        Acknowledge => 7,
        Shelve => 8,
        SetAlarmOutOfService => 9,
        ResetLatch => 10,
        ConfirmReset => 11,
        SetTierInUse => 12,
        BeginProofTest => 13,
        AnswerProofTest => 14,
        AbandonProofTest => 15,
        Unshelve => 16,
        _ => 0,
    };

    private static RackId Rack(ref ByteReader from) => new(from.Index());

    private static int Tier(long number) => number is >= int.MinValue and <= int.MaxValue
        ? (int)number
        : throw new FormatException("a tier lies beyond every rack");

    // 0 is all of them.
    private static void PutAnyRack(RackId? rack, ByteWriter to) => to.Put(rack is { } one ? (ulong)one.Index + 1 : 0);

    private static RackId? AnyRack(ref ByteReader from) => from.Index() is > 0 and var place ? new RackId(place - 1) : null;
}
