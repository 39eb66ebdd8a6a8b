using RackController.Bench.Tests.Support;
using RackController.Testing;

namespace RackController.Bench.Tests.Scenarios;

public sealed class BadScenarioTests
{
    private const string Head = "start: 2026-03-02 06:30\nlength: 2 h\n";
    private const string Expect = "expect:\n  - that: it holds\n    never: { rack: north, spilled: above 1 L }\n";

    [Theory]
    [InlineData("lenght: 2 h\n" + Expect, "`lenght`", "length")]
    [InlineData(Head, "expect", "")]
    [InlineData("start: yesterday\nlength: 2 h\n" + Expect, "`yesterday`", "2026-03-29 01:30")]
    [InlineData("start: 2026-03-02 06:30\nlength: 45 kg\n" + Expect, "mass", "")]
    [InlineData(Head + "expect:\n  - that: x\n    never: { load: north/pomp, is: on }\n", "`north/pomp`", "north/pump")]
    [InlineData(Head + "expect:\n  - that: x\n    never: { load: north/pump }\n", "does not say one thing", "powered")]
    [InlineData(Head + "expect:\n  - that: x\n    never: { load: north/pump, is: offf }\n", "`is` is `offf`", "`off`")]
    [InlineData(Head + "expect:\n  - that: x\n    never: { alarm: north/low-float, is: loud }\n", "`is` is `loud`", "`active`")]
    [InlineData(Head + "expect:\n  - that: x\n    never: { is: on }\n", "about nothing", "")]
    [InlineData(Head + "expect:\n  - that: x\n    never: { load: north/pump, rack: north, is: on }\n", "more than one thing", "")]
    [InlineData(Head + "expect:\n  - that: x\n", "of no kind", "always")]
    [InlineData(Head + "expect:\n  - that: x\n    within: 1 s\n    of: { happens: start }\n", "of no kind", "then")]
    [InlineData(Head + "expect:\n  - that: x\n    recovers-within: 1 h\n", "of no kind", "`recovers-within:` with `of:`")]
    [InlineData(Head + "expect:\n  - that: x\n    recovers-within: soon\n    of: { happens: start }\n", "`soon`", "30 min")]
    [InlineData(
        Head + "expect:\n  - that: x\n    recovers-within: 1 h\n    of: { happens: start }\n    then: { controller: away }\n",
        "of no kind", "")]
    [InlineData(Head + "expect:\n  - that: x\n    never: { tier: north/tier 9, depth: above 3 mm }\n", "north/tier 9", "")]
    [InlineData(Head + "expect:\n  - that: x\n    never: { tier: north/tier 1, depth: 3 mm }\n", "no comparison", "above")]
    [InlineData(Head + "expect:\n  - that: x\n    never: { alarm: north/lowfloat, is: active }\n", "names no alarm", "low-float")]
    [InlineData(Head + "expect:\n  - that: x\n    never: { happens: the flood }\n", "the flood", "")]
    [InlineData(Head + "events:\n  - at: 3 h\n    ask: stop\n" + Expect, "after the end of the run", "length")]
    [InlineData(Head + "events:\n  - at: 1 h\n    ask: hold\n" + Expect, "does not say enough", "rack")]
    [InlineData(Head + "events:\n  - at: 1 h\n    fault: relay-welded\n" + Expect, "load", "")]
    [InlineData(Head + "events:\n  - at: 1 h\n    fault: tray-leak\n    tier: north/tier 1\n" + Expect, "how much", "L/min")]
    [InlineData(Head + "events:\n  - at: 1 h\n    fault: relay-welded\n    load: north/pump\n    size: 3\n" + Expect, "no size", "")]
    [InlineData(Head + "breakers: quick\n" + Expect, "`breakers` is `quick`", "`slow`")]
    [InlineData(Head + "events:\n  - at: 1 h\n    fault: earth-leakage\n    load: north/pump\n    size: 4\n" + Expect, "a unit", "mA")]
    [InlineData(Head + "events:\n  - at: 1 h\n    fault: brown-out\n    circuit: cellar sockets\n    size: 80\n" + Expect, "80", "")]
    [InlineData(Head + "events:\n  - at: 2026-03-01 00:00\n    ask: stop\n" + Expect, "before the start", "")]
    [InlineData(Head + "events:\n  - at: 1 h\n    clock: sideways\n" + Expect, "sideways", "back 1 h")]
    public void AMistakeIsSaidWhereItIsWithWhatToDo(string text, string what, string whatToDo)
    {
        var reading = Scenes.Read(text);

        Assert.Null(reading.Scenario);
        Assert.Contains(
            reading.Complaints,
            one => one.What.Contains(what, StringComparison.Ordinal) && one.WhatToDo.Contains(whatToDo, StringComparison.Ordinal));
    }

    [Fact]
    public void SeveralMistakesAreSaidAtOnce() => Assert.True(
        Scenes.Read("start: x\nlength: y\nexpect:\n  - that: z\n    never: { load: q, is: on }\n").Complaints.Length >= 3);

    [Fact]
    public void ARackFileInThePlaceOfAScenarioIsRecognised()
    {
        var reading = ScenarioReader.Read(ShippedFiles.PathTo("config/demo-four-tier.yaml"));
        Assert.Equal("this is a rack file, and a scenario belongs here", Assert.Single(reading.Complaints).What);
    }

    [Fact]
    public void AMissingFileAndADirectoryAreNotJudged()
    {
        Assert.False(ScenarioReader.Read(Path.Combine(Path.GetTempPath(), "no-such-scenario.yaml")).CouldBeRead);
        Assert.False(ScenarioReader.Read(Path.GetTempPath()).CouldBeRead);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\0\u0001binary")]
    [InlineData("a: &a [x]\nb: [*a, *a]\n")]
    [InlineData("expect:\n\t- that: x\n")]
    [InlineData("just a sentence")]
    [InlineData("rack-file: [a, b]\nexpect: 3\n")]
    [InlineData("rack-file: nowhere.yaml\nexpect: 3\n")]
    public void WhateverStandsInAFileTheAnswerIsAComplaintAndNoException(string text)
    {
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, text);
            var reading = ScenarioReader.Read(file);
            Assert.Null(reading.Scenario);
            Assert.NotEmpty(reading.Complaints);
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public void AHugeFileIsRefusedUnread()
    {
        var file = Path.GetTempFileName();
        try
        {
            using (var stream = File.OpenWrite(file))
            {
                stream.SetLength(50_000_000);
            }

            Assert.Contains("larger than", Assert.Single(ScenarioReader.Read(file).Complaints).What, StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }
    }
}
