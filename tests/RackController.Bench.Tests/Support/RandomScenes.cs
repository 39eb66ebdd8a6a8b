using CsCheck;
using NodaTime;
using RackController.Control;
using RackController.Model;
using RackController.Plant;
using RackController.Testing;

namespace RackController.Bench.Tests.Support;

/// <summary>Random scenarios on random sites: floods, lights and several things that go wrong at once, at times that no scan falls
/// on, with people, clocks and the board's own power among them.</summary>
internal static class RandomScenes
{
    // A quiet day, and two on which the clock of the zone changes.
    private static readonly LocalDate[] dates = [new(2026, 3, 2), new(2026, 3, 8), new(2026, 11, 1)];

    /// <summary>Any scenario.</summary>
    public static Gen<Scenario> Any { get; } =
        from site in RandomSites.Any
        from date in Gen.OneOf(dates)
        from second in Gen.Frequency((4, Gen.Int[23_400, 31_000]), (1, Gen.Int[5_000, 7_150]))
        from minutes in Gen.Frequency((4, RandomParts.Anywhere(1, 10)), (1, RandomParts.Anywhere(10, 60)))
        let length = Duration.FromSeconds(Math.Round(60 * minutes, 1))
        from found in RandomStarts.Any
        from room in Gen.Frequency((2, Gen.Const((RoomProfile?)null)), (1, Room))
        from events in Event(site, length).Array[0, 7]
        from expectations in RandomExpectations.Of(site, length).Array[0, 6]
        select new Scenario
        {
            Name = "random",
            About = "",
            File = "",
            RackFile = "",
            Site = site,
            Start = (date + LocalTime.FromSecondsSinceMidnight(second)).InZoneLeniently(site.Zone).ToInstant(),
            Length = length,
            Found = found,
            Room = room,
            Events = [.. events.SelectMany(some => some).OrderBy(happening => happening.At)],
            Expectations = [.. expectations],
            Accepts = [],
        };

    private static Gen<RoomProfile?> Room => Gen.Int[0, 1439].HashSet[1, 6]
        .SelectMany(minutes => Gen.Select(Gen.Int[-5, 45], Gen.Int[5, 100]).Array[minutes.Count], (minutes, air) => new RoomProfile(
        [
            .. minutes.Order().Zip(air, (minute, point) =>
                new RoomPoint(LocalTime.Midnight.PlusMinutes(minute), point.Item1, point.Item2)),
        ]))
        .Select(profile => (RoomProfile?)profile);

    private static Gen<ScenarioEvent[]> Event(Site site, Duration length) => Gen.Frequency(
        (6, RandomFaults.Of(site, length, longest: length).Select(Fails)),
        (3, Gen.Select(At(length), Request(site)).Select((at, request) =>
            new ScenarioEvent[] { new PersonAsks(at, "asks", request) })),
        (1, Gen.Select(At(length), Gen.Int[-90, 90], Gen.Bool).Select(ClockChange)),
        (1, Gen.Select(At(length), RandomParts.Anywhere(0.5, 200), Gen.Int[-40, 40].Nullable(0.5)).Select(
            (at, awayS, wallH) => new ScenarioEvent[]
        {
            new ControllerGoes(at, "off"),
            new ControllerComes(
                at + Duration.FromSeconds(awayS), "on",
                wallH is { } hours ? Instant.FromUtc(2026, 3, 2, 12, 0) + Duration.FromHours(hours) : null),
        })),
        (2, Gen.Select(At(length), Gen.Int[-10, 50], Gen.OneOf(Gen.Int[5, 100], Gen.Const(100))).Select((at, airC, percent) =>
            new ScenarioEvent[] { new RoomChanges(at, "room", airC, percent) })));

    private static Gen<Duration> At(Duration length) => RandomParts.Anywhere(0, length.TotalSeconds).Select(Duration.FromSeconds);

    private static ScenarioEvent[] Fails(Fault fault) =>
    [
        new RackFails(fault.From - MonotonicTime.Zero, "fails", fault), new RackMends(fault.Until - MonotonicTime.Zero, "mends"),
    ];

    private static ScenarioEvent[] ClockChange(Duration at, int minutes, bool losesTrust) => minutes % 5 == 0
        ? [new ClockSetRight(at, "right")]
        : losesTrust
            ? [new ClockSteps(at, "steps", Duration.FromMinutes(minutes)), new ClockLosesTrust(at, "untrusted")]
            : [new ClockSteps(at, "steps", Duration.FromMinutes(minutes))];

    private static Gen<OperatorRequest> Request(Site site) =>
        from kind in Gen.Int[0, 16]
        from index in Gen.Int[0, site.Racks.Length - 1]
        from tier in Gen.Int[1, site.Racks[index].Tiers.Length]
        from seconds in RandomParts.Anywhere(1, 400)
        from row in Gen.OneOf(CauseAndEffectTable.Rows.ToArray())
        from place in Gen.OneOf([.. site.Racks.Select(rack => rack.Name), .. site.Circuits.Select(circuit => circuit.Name)])
        from flag in Gen.Bool
        from item in Gen.OneOf([.. site.Sensors.Select(sensor => sensor.Name), .. site.Loads.Select(load => load.Name)])
        select Request(kind, new RackId(index), tier, Duration.FromSeconds(seconds), $"{place}/{row.Id}", flag, item);

    private static OperatorRequest Request(int kind, RackId rack, int tier, Duration length, string alarm, bool flag, string item)
    {
        const string By = "the grower";
        return kind switch
        {
            0 => new Stop(By, flag ? rack : null),
            1 => new Resume(By, flag ? rack : null),
            2 => new SkipNextFlood(By, rack),
            3 => new HoldForService(By, rack, length),
            4 => new EndServiceHold(By, rack),
            5 => new Acknowledge(By, alarm),
            6 => new Shelve(By, alarm, length),
            7 => new SetAlarmOutOfService(By, alarm, flag),
            8 => new ResetLatch(By, alarm),
            9 => new ConfirmReset(By, alarm),
            10 => new SetTierInUse(By, rack, tier, flag),
            11 => new BeginProofTest(By, item),
            12 => new AnswerProofTest(By, flag),
            13 => new AbandonProofTest(By),
            14 => new Unshelve(By, alarm),
            _ => new FloodNow(By, rack),
        };
    }
}
