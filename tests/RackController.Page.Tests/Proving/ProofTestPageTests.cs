using Microsoft.Playwright;
using NodaTime;
using RackController.Control;

namespace RackController.Page.Tests;

/// <summary>Proof tests in a browser.</summary>
public sealed class ProofTestPageTests(Chromium chromium) : IClassFixture<Chromium>, IAsyncLifetime
{
    private const string Light = "north/tier 1 light";
    private const string Rope = "north/leak rope";

    private ServedRack served = null!;

    public async Task InitializeAsync() => served = await ServedRack.OfFileAsync(speed: 8);

    public async Task DisposeAsync() => await served.DisposeAsync();

    [Theory]
    [MemberData(nameof(View.Names), MemberType = typeof(View))]
    public async Task TheyHoldToTheGuidelinesOnEveryScreen(string view)
    {
        var page = await OpenAsync(View.Of(view));
        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, $"proof-tests-{view}");

        await page.GetByRole(AriaRole.Link, new() { Name = $"Test {Light}" }).ClickAsync();
        await Judgement.HoldsAsync(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = $"{Light}, step 1 of 2" })).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "It is so" })).ToBeVisibleAsync();
        await Judgement.HoldsAsync(page);
        await Chromium.KeepAsync(page, $"proof-test-{view}");
    }

    [Fact]
    public async Task ItFitsAScreenOf320Pixels() => await Judgement.HoldsAsync(await OpenAsync(View.Phone with { Width = 320 }));

    // By keyboard alone, and each step only after the rack is as it needs it.
    [Fact]
    public async Task ARelayIsTestedStepByStepAndThePassIsOnRecord()
    {
        var page = await OpenAsync(View.Laptop);
        await page.GetByRole(AriaRole.Link, new() { Name = $"Test {Light}" }).PressAsync("Enter");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin" }).PressAsync("Enter");

        var yes = page.GetByRole(AriaRole.Button, new() { Name = "It is so" });
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("is it off?");
        await yes.PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("is it on?");
        await yes.PressAsync("Enter", new() { Timeout = 20_000 });

        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "What came of the last" })).ToBeVisibleAsync();
        var status = await served.SeeAsync(at => at.ProofTest is null);
        var test = status.ProofTests.Single(each => each.Item == Light);
        Assert.True(test is { HasFailed: false, PassedAt: not null });
    }

    [Fact]
    public async Task WhatIsNotAsItShouldBeIsAFailedTestAndAnAlarm()
    {
        var page = await OpenAsync(View.Phone);
        await page.GetByRole(AriaRole.Link, new() { Name = $"Test {Light}" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "It is not so" }).ClickAsync();

        await Assertions.Expect(page.GetByText("failed: repair it and test it again; last passed: never")).ToBeVisibleAsync();
        await served.SeeAsync(at => at.Alarms.Any(alarm => alarm.Key == "north/proof-test-failed"));
    }

    [Fact]
    public async Task AnAnswerToAStepThatIsOverIsNoAnswer()
    {
        using var guest = new Guest(served.Address);
        (await guest.PostAsync("/proof-tests/begin", ("item", Light))).Dispose();
        await served.SeeAsync(at => at.ProofTest is { WaitsForRack: false });

        (await guest.PostAsync("/proof-tests/answer", ("item", Light), ("step", "2"), ("seen", "yes"))).Dispose();
        (await guest.PostAsync("/proof-tests/answer", ("item", Rope), ("step", "1"), ("seen", "yes"))).Dispose();
        Assert.Equal(1, (await served.SeeAsync(_ => true)).ProofTest?.Step);

        (await guest.PostAsync("/proof-tests/answer", ("item", Light), ("step", "1"), ("seen", "yes"))).Dispose();
        await served.SeeAsync(at => at.ProofTest?.Step == 2);
    }

    [Fact]
    public async Task ATestThatReadingsJudgeIsLookedAtAgainUntilItIsAbandoned()
    {
        var page = await OpenAsync(View.Phone);
        await page.GetByRole(AriaRole.Link, new() { Name = $"Test {Rope}" }).ClickAsync();
        await Assertions.Expect(page.GetByText("You wet the rope and dry it")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin" }).ClickAsync();

        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("wet the rope");
        await Assertions.Expect(page.Locator("script[data-after-s]")).ToBeAttachedAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Abandon it" }).ClickAsync();

        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = $"Test {Rope}" })).ToBeVisibleAsync();
        Assert.Null((await served.SeeAsync(_ => true)).ProofTest);
    }

    [Fact]
    public void EveryKindOfTestSaysWhatComesOfIt()
    {
        var test = new ProofTestStatus("x", default, Duration.FromDays(90), null, Instant.MaxValue, IsOverdue: false, HasFailed: false);

        Assert.All(
            Enum.GetValues<ProofTestKind>(), kind => Assert.True(ProofTestConsequences.Of(test with { Kind = kind }, null).Length >= 3));
    }

    private Task<IPage> OpenAsync(View view) => chromium.OpenAsync(view, new Uri(served.Address, "/proof-tests"));
}
