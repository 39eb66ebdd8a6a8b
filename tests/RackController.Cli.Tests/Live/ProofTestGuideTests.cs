using NodaTime;
using RackController.Control;
using RackController.Live;
using RackController.Service;

namespace RackController.Cli.Tests.Live;

public sealed class ProofTestGuideTests
{
    private static readonly SiteStatus calm = Pictures.Calm(Pictures.DemoSite("demo-four-tier.yaml"));
    private readonly List<OperatorRequest> asked = [];
    private readonly ProofTestGuide guide = new("Ada");

    [Fact]
    public void ClosedItLeavesEveryKeyButItsOwnToOthers()
    {
        Assert.False(Press('J', calm));
        Assert.False(Press('Y', Under(asksPerson: true)));
        Assert.False(guide.IsOpen);
        Assert.True(Press('P', calm));
        Assert.True(guide.IsOpen);
        Assert.True(Press('P', calm));
        Assert.False(guide.IsOpen);
    }

    [Fact]
    public void ATestIsChosenAndBegun()
    {
        Press('P', calm);
        Press('J', calm);
        Press('J', calm);
        Press('K', calm);
        Press('\r', calm);
        Assert.Equal(new BeginProofTest("Ada", calm.ProofTests[1].Item), Assert.Single(asked));
    }

    [Fact]
    public void TheListGoesRound()
    {
        Press('P', calm);
        Press('K', calm);
        Assert.Equal(calm.ProofTests.Length - 1, guide.Chosen);
        Press('J', calm);
        Assert.Equal(0, guide.Chosen);
    }

    [Theory]
    [InlineData('Y', true)]
    [InlineData('N', false)]
    public void WhatWasSeenIsAnsweredWhereItIsAsked(char key, bool asExpected)
    {
        Press('P', calm);
        Assert.True(Press(key, Under(asksPerson: false)));
        Assert.True(Press(key, Under(asksPerson: true, waits: true)));
        Assert.Empty(asked);
        Press(key, Under(asksPerson: true));
        Assert.Equal(new AnswerProofTest("Ada", asExpected), Assert.Single(asked));
    }

    [Fact]
    public void ATestCanBeAbandoned()
    {
        Press('P', calm);
        Press('Q', Under(asksPerson: false));
        Assert.Equal(new AbandonProofTest("Ada"), Assert.Single(asked));
    }

    [Theory]
    [InlineData('S', false)]
    [InlineData('H', false)]
    [InlineData('F', false)]
    [InlineData('T', true)]
    [InlineData('N', true)]
    public void OpenItLetsThroughWhatATestMayNeedAndNothingThatWouldSurprise(char key, bool isSwallowed)
    {
        Press('P', calm);
        Assert.Equal(isSwallowed, Press(key, calm));
        Assert.Equal(isSwallowed, Press(key, Under(asksPerson: false)));
        Assert.Empty(asked);
    }

    private static SiteStatus Under(bool asksPerson, bool waits = false) => calm with
    {
        ProofTest = new ProofTestProgress("north/pump", 1, 2, "does it run?", asksPerson, waits, Duration.FromSeconds(30)),
    };

    private bool Press(char key, SiteStatus status) => guide.Take(key, status, (request, _) => asked.Add(request));
}
