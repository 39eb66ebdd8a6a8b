namespace RackController.RackFile.Tests.Binding;

public sealed class KeyTests
{
    [Theory]
    [InlineData("depth: 400 mm", "dept: 400 mm", "rack.yaml:11:33: reservoir has no key `dept`: did you mean `depth`?")]
    [InlineData("io: simulated", "i0: simulated", "rack.yaml:38:1: rack file has no key `i0`: did you mean `io`?")]
    [InlineData("valve: { power: 6 W }\n        sensors", "valve: { power: 6 W, prioritty: 4 }\n        sensors",
        "did you mean `priority`?")]
    [InlineData("normal-volume: 140 L", "Normal_Volume: 140 L", "did you mean `normal-volume`?")]
    [InlineData("fans:", "heaters:", "rack has no key `heaters`: write one of name, circuit, reservoir")]
    public void AnUnknownKeySuggestsTheNearestKnownOne(string old, string replacement, string expected) =>
        Expect.Complaint(RackFiles.SmallWith(old, replacement), expected);

    [Fact]
    public void AMisspeltKeyIsNotAlsoSaidToBeMissing() =>
        Expect.Complaint(RackFiles.SmallWith("depth: 400 mm", "dept: 400 mm"), "did you mean `depth`?");

    [Fact]
    public void AKeyMayStandOnlyOnce() =>
        Expect.Complaint(RackFiles.SmallWith("zone: America/New_York", "zone: America/New_York\nzone: Europe/London"),
            "rack.yaml:3:1: `zone` stands here a second time: keep one of them");

    [Fact]
    public void AMissingKeySaysWhatBelongsThere() =>
        Expect.Complaint(RackFiles.SmallWith("depth: 400 mm, ", ""), "reservoir lacks `depth`",
            "a length (mm, cm, m, in, ft), such as `45 mm`");

    [Theory]
    [InlineData("soak: 5 min", "soak: [5 min]", "`soak` holds a list where one value belongs")]
    [InlineData("soak: 5 min", "soak: { for: 5 min }", "`soak` holds keys where one value belongs")]
    [InlineData("soak: 5 min", "soak:", "`soak` is empty")]
    [InlineData("at: [07:00, 13:00, 19:00]", "at: 07:00", "`at` is no list")]
    [InlineData("at: [07:00, 13:00, 19:00]", "at: []", "`at` holds 0 items")]
    [InlineData("io: simulated", "io: [simulated]", "`io` holds a list")]
    [InlineData("aerator: { power: 5 W }", "aerator: 5 W", "`aerator` holds `5 W`")]
    public void AWrongTypeIsSaidToBeWrong(string old, string replacement, string expected) =>
        Expect.Complaint(RackFiles.SmallWith(old, replacement), expected);

    [Fact]
    public void AllMistakesAreSaidAtOnceInTheOrderOfTheFile() => Expect.Complaints(
        RackFiles.Small
            .Replace("America/New_York", "America/New_Yrok", StringComparison.Ordinal)
            .Replace("volume: 160 L, depth", "volume: 160 L, deph", StringComparison.Ordinal)
            .Replace("standpipe: 40 mm", "standpipe: 90 mm", StringComparison.Ordinal)
            .Replace("soak: 5 min", "soak: 5 kg", StringComparison.Ordinal)
            .Replace("for: 16 h", "for: 25 h", StringComparison.Ordinal),
        "rack.yaml:2:7: `zone` is `America/New_Yrok`, not a zone of the IANA database: did you mean `America/New_York`?",
        "rack.yaml:11:33: reservoir has no key `deph`: did you mean `depth`?",
        "rack.yaml:28:28: the standpipe is 90 mm high and the tray's rim 85 mm, so water leaves over the rim: "
        + "shorten the standpipe to at most 75 mm, or use a deeper tray",
        "rack.yaml:30:33: `for` is `25 h`, outside 0 min to 24 h: a day has 24 h; write at most that",
        "rack.yaml:34:15: `soak` is `5 kg`, which is a mass: write a duration (h, min, s, ms, d), such as `30 min` or `1 h 30 min`");
}
