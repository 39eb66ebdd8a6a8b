using System.Globalization;

namespace RackController.RackFile.Tests.Checks;

public sealed class ElectricTests
{
    private const string FirstLight =
        "light: { power: 80 W, ppfd: 180 umol/m2/s }\n        valve: { power: 6 W }\n        sensors";

    [Fact]
    public void LoadsThatTheScheduleWantsAtOnceFitTheirCircuit() => Expect.Complaint(
        RackFiles.SmallWith("power: 80 W, ppfd", "power: 700 W, ppfd"),
        "rack.yaml:4:5: at 07:00 the schedule wants",
        "(north/tier 1 light 6.14 A, north/tier 2 light 6.14 A, north/pump 0.63 A",
        "and this circuit may carry 12 A for hours");

    [Fact]
    public void AContactorThatNothingOpensDrawsAWarning()
    {
        const string Breaker = "breaker: 15 A";
        Expect.Complaint(
            RackFiles.SmallWith(Breaker, Breaker + "\n    upstream-contactor: yes"),
            "warning: nothing tells the controller when to open this contactor");
        Expect.Complaints(RackFiles.SmallWith(Breaker, Breaker + "\n    upstream-contactor: no"));
        Expect.Complaints(RackFiles.SmallWith(Breaker, Breaker + "\n    upstream-contactor: yes")
            .Replace("supply-sense: yes", "supply-sense: yes, current: yes", StringComparison.Ordinal));
    }

    [Fact]
    public void LoadsThatNeverRunTogetherDoNotAddUp()
    {
        var text = RackFiles.SmallWith("power: 80 W, ppfd", "power: 700 W, ppfd")
            .Replace("lights: { on: 06:00, for: 16 h }",
                "lights: { on: 00:00, for: 11 h, tiers: [{ tier: 2, on: 12:00, for: 11 h }] }", StringComparison.Ordinal);

        Expect.Complaints(text);
    }

    [Fact]
    public void ASpanAcrossMidnightCountsInTheMorning() => Expect.Complaint(
        RackFiles.SmallWith("power: 80 W, ppfd", "power: 700 W, ppfd")
            .Replace("lights: { on: 06:00, for: 16 h }",
                "lights: { on: 22:00, for: 10 h, tiers: [{ tier: 2, on: 05:00, for: 1 h }] }", StringComparison.Ordinal),
        "at 05:00 the schedule wants 12.5 A at once");

    [Fact]
    public void ALoadThatItsCircuitCannotCarryAloneIsRefused() => Expect.Among(
        RackFiles.SmallWith(FirstLight, FirstLight.Replace("80 W", "2 kW", StringComparison.Ordinal)),
        "north/tier 1 light alone draws 17.5 A, and its circuit may carry 12 A");

    /// <summary>NEC 210.20(A), as quoted in a conductor ampacity data bulletin of productinfo.schneider-electric.com: the breaker
    /// is sized at 125 % of the continuous load, so at most 80 % of its rating is continuous.</summary>
    [Theory]
    [InlineData("12 A", null)]
    [InlineData("12.1 A", "warning: a continuous limit above 12 A, which is 80 % of the breaker")]
    [InlineData("16 A", "a continuous limit above the breaker's 15 A")]
    public void AContinuousLimitIsAtMostFourFifthsOfTheBreaker(string limit, string? expected)
    {
        var text = RackFiles.SmallWith("breaker: 15 A", $"breaker: 15 A\n    continuous-limit: {limit}");
        if (expected is null)
        {
            Expect.Complaints(text);
            return;
        }

        Expect.Complaint(text, expected);
    }

    /// <summary>I = P / (U cos phi): 54 W at 120 V and a power factor of 0.6 are 0.75 A.</summary>
    [Theory]
    [InlineData("power: 54 W")]
    [InlineData("current: 0.75 A")]
    [InlineData("current: 750 mA")]
    public void ANameplateMayStateWattsOrAmperes(string nameplate)
    {
        var site = Expect.Site(RackFiles.SmallWith("power: 45 W", nameplate));

        Assert.Equal(54, site.Loads[0].PowerW, 1e-9);
        Assert.Equal(0.75, site.Loads[0].CurrentA(120), 1e-9);
    }

    [Theory]
    [InlineData("power: 45 W", "priority: 3", "a load without power or current")]
    [InlineData("power: 45 W", "power: 45 W\n      current: 1 A", "both power and current")]
    [InlineData("power: 45 W", "power: 45 W\n      power-factor: 1.2", "`power-factor` is `1.2`, out of range")]
    [InlineData("power: 45 W", "power: 45 W\n      priority: 0", "`priority` is `0`, out of range")]
    public void ANameplateIsWhole(string old, string replacement, string expected) =>
        Expect.Complaint(RackFiles.SmallWith(old, replacement), expected);

    [Theory]
    [InlineData("power: 45 W", "power: 45 W\n      contact: normally-closed",
        "pump is on a normally-closed contact, so it would run whenever the controller is dead")]
    [InlineData("power: 45 W", "power: 45 W\n      safe-state: on", "the safe state of pump is on, so water would run")]
    [InlineData("80 W, ppfd: 180 umol/m2/s }\n        valve: { power: 6 W }\n        sensors",
        "80 W, contact: normally-closed, ppfd: 180 umol/m2/s }\n        valve: { power: 6 W }\n        sensors",
        "tier 1 light is on a normally-closed contact")]
    [InlineData("- power: 12 W", "- power: 12 W\n        contact: normally-open",
        "warning: fan is on a normally-open contact, so it would stop whenever the controller is dead")]
    [InlineData("aerator: { power: 5 W }", "aerator: { power: 5 W, contact: normally-open }",
        "warning: aerator is on a normally-open contact")]
    public void ADeadControllerLeavesEveryLoadInItsSafeState(string old, string replacement, string expected) =>
        Expect.Complaint(RackFiles.SmallWith(old, replacement), expected);

    [Theory]
    [InlineData("circuit: sockets", "circuit: socket", "there is no circuit `socket`: did you mean `sockets`?")]
    [InlineData("aerator: { power: 5 W }", "aerator: { power: 5 W, circuit: ring }",
        "there is no circuit `ring`: write one of sockets")]
    [InlineData("      - power: 12 W", "      - power: 12 W\n      - { power: 9 W, name: Pump }",
        "a second load of this rack called `Pump`")]
    [InlineData("racks:\n", "  - { name: Sockets, voltage: 120 V, breaker: 15 A }\nracks:\n",
        "a second circuit called `Sockets`")]
    public void NamesAreThereAndUnique(string old, string replacement, string expected) =>
        Expect.Complaint(RackFiles.SmallWith(old, replacement), expected);

    [Fact]
    public void ASecondRackNeedsANameOfItsOwn()
    {
        var start = RackFiles.Small.IndexOf("  - name: north", StringComparison.Ordinal);
        var rack = RackFiles.Small[start..RackFiles.Small.IndexOf("io:", StringComparison.Ordinal)];

        Expect.Complaint(RackFiles.SmallWith("io: simulated", rack + "io: simulated"), "a second rack called `north`");
    }

    [Fact]
    public void ARackOnOneOfSeveralCircuitsSaysWhich() => Expect.Complaint(
        RackFiles.SmallWith("    circuit: sockets\n", "")
        .Replace("racks:\n", "  - { name: other, voltage: 120 V, breaker: 15 A }\nracks:\n", StringComparison.Ordinal),
        "a rack that does not say which circuit it draws from", "one of sockets, other");

    [Theory]
    [InlineData("80 V", false)]
    [InlineData("230 V", true)]
    public void AVoltageIsOneOfTheMains(string voltage, bool isSound) => Assert.Equal(
        isSound,
        RackFileReader.Parse(RackFiles.SmallWith("voltage: 120 V",
        string.Create(CultureInfo.InvariantCulture, $"voltage: {voltage}")), "r").Site is not null);
}
