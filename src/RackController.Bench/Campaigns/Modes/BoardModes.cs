using NodaTime;
using RackController.Plant;

namespace RackController.Bench;

/// <summary>How the controller's board and its clock fail. The bench itself plays what the simulated rack does not know of.</summary>
internal static class BoardModes
{
    // Inputs or outputs that fail make every scan count, and what a controller does in a minute of that it does in an hour.
    private static readonly (Duration, Duration) briefly = (Duration.FromMilliseconds(100), Duration.FromMinutes(1));
    private static readonly Duration rebootsIn = Duration.FromSeconds(15);
    private static readonly Duration hour = Duration.FromHours(1);

    /// <summary>The modes.</summary>
    public static IEnumerable<FaultMode> All =>
    [
        FaultMode.Of(FaultKind.ReadFails, "inputs fail", FaultFamily.Board, FaultTarget.OfSite, briefly, ModeSources.NoAnswer),
        FaultMode.Of(FaultKind.WriteFails, "outputs fail", FaultFamily.Board, FaultTarget.OfSite, briefly, ModeSources.NoAnswer),
        Power("board restarts", Duration.FromSeconds(1), Duration.FromSeconds(40)),
        Power("board loses power", Duration.FromMinutes(1), Duration.FromHours(4)),
        Boot("board boots without a clock", Duration.FromDays(-90)),
        Boot("board boots behind its time", Duration.FromMinutes(-17)),
        Clock("clock steps back", -1, Duration.FromSeconds(1), Duration.FromHours(12)),
        Clock("clock steps ahead", 1, Duration.FromSeconds(1), Duration.FromHours(12)),
        Clock("clock a season ahead", 1, Duration.FromDays(20), Duration.FromDays(200)),
        new FaultMode("clock-loses-trust", "clock loses trust", FaultFamily.Clock, ModeSources.NoBattery)
        {
            ShortestLasts = Duration.FromMinutes(10),
            LongestLasts = Duration.FromHours(8),
            Targets = FaultTarget.OfSite,
            Happens = drawn => [new ClockLosesTrust(drawn.At, drawn.Name), SetRight(drawn)],
        },
    ];

    private static FaultMode Power(string words, Duration shortest, Duration longest) =>
        new(words.Replace(' ', '-'), words, FaultFamily.Board, ModeSources.PowerSupply)
        {
            ShortestLasts = shortest,
            LongestLasts = longest,
            Targets = FaultTarget.OfSite,
            Happens = drawn => [new ControllerGoes(drawn.At, drawn.Name), new ControllerComes(drawn.Ends, $"end of {drawn.Name}", null)],
        };

    // The power is soon back; the clock is wrong, with nothing to vouch for it, until network time comes.
    private static FaultMode Boot(string words, Duration error) =>
        new(words.Replace(' ', '-'), words, FaultFamily.Board, ModeSources.NoBattery)
        {
            ShortestLasts = Duration.FromMinutes(1),
            LongestLasts = Duration.FromHours(8),
            Targets = FaultTarget.OfSite,
            Happens = drawn =>
            [
                new ControllerGoes(drawn.At, drawn.Name),
                new ControllerComes(drawn.At + rebootsIn, $"end of {drawn.Name}", FloorToMinute(drawn.Start + drawn.At + error)),
                new ClockSetRight(drawn.Ends, $"{drawn.Name}: network time"),
            ],
        };

    private static FaultMode Clock(string words, int sign, Duration least, Duration most) =>
        new(words.Replace(' ', '-'), words, FaultFamily.Clock, ModeSources.WrongTime)
        {
            ShortestLasts = Duration.FromMinutes(1),
            LongestLasts = Duration.FromHours(8),
            Sizes = new FaultSizes(least.TotalSeconds, most.TotalSeconds, hour.TotalSeconds, "s"),
            Targets = FaultTarget.OfSite,
            Happens = drawn =>
            [
                new ClockSteps(drawn.At, drawn.Name, Duration.FromSeconds(sign * Math.Round(drawn.Size))),
                SetRight(drawn),
            ],
        };

    // A scenario writes what a clock says to the minute.
    private static Instant FloorToMinute(Instant time) => Instant.FromUnixTimeSeconds(time.ToUnixTimeSeconds() / 60 * 60);

    private static ClockSetRight SetRight(DrawnFault drawn) => new(drawn.Ends, $"end of {drawn.Name}");
}
