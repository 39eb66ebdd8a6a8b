using NodaTime;

namespace RackController.Page.Tests;

public sealed class SessionsTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("rackcontroller-sessions-");
    private readonly SetClock clock = new(Instant.FromUtc(2027, 1, 15, 11, 0));
    private readonly List<string> complaints = [];
    private readonly Person ada = new("ada", Role.View, new PasswordHash(1, [1], [2]), "key", []);

    private string FilePath => Path.Combine(folder.FullName, "sessions.json");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void OneThatIsUsedLastsAndOneThatIsNotEnds()
    {
        var sessions = Open();
        var cookie = sessions.Begin(ada, "a test", "here");

        clock.Now += Sessions.Idle;
        Assert.NotNull(sessions.Use(cookie));
        clock.Now += Sessions.Idle + Duration.FromSeconds(1);
        Assert.Null(sessions.Use(cookie));
    }

    [Fact]
    public void NoneLastsBeyondItsLongest()
    {
        var sessions = Open();
        var cookie = sessions.Begin(ada, "a test", "here");
        for (var i = 0; i < 9; i++)
        {
            clock.Now += Duration.FromDays(20);
            Assert.NotNull(sessions.Use(cookie));
        }

        clock.Now += Duration.FromDays(1);
        Assert.Null(sessions.Use(cookie));
    }

    [Fact]
    public void ItOutlastsARestartAndItsEndDoesToo()
    {
        var (kept, ended) = (Open().Begin(ada, "a phone", "here"), "");
        Assert.NotNull(Open().Use(kept));
        ended = Open().Begin(ada, "a laptop", "here");
        Open().End(session => session.Digest == Secret.Digest(ended));

        Assert.NotNull(Open().Use(kept));
        Assert.Null(Open().Use(ended));
        Assert.True(OwnerOnly.Reads(FilePath));
    }

    [Fact]
    public void UseIsWrittenOnceAnHourAtMost()
    {
        var sessions = Open();
        var cookie = sessions.Begin(ada, "a test", "here");
        var written = File.ReadAllText(FilePath);

        clock.Now += Duration.FromMinutes(59);
        sessions.Use(cookie);
        Assert.Equal(written, File.ReadAllText(FilePath));
        clock.Now += Duration.FromMinutes(2);
        sessions.Use(cookie);
        Assert.NotEqual(written, File.ReadAllText(FilePath));
    }

    [Fact]
    public void TheOldestMakesRoom()
    {
        var sessions = Open();
        var first = sessions.Begin(ada, "a test", "here");
        for (var i = 0; i < Sessions.MostOfOnePerson; i++)
        {
            clock.Now += Duration.FromSeconds(1);
            sessions.Begin(ada, "a test", "here");
        }

        Assert.Null(sessions.Use(first));
        Assert.Equal(Sessions.MostOfOnePerson, sessions.Of(ada).Length);
    }

    [Fact]
    public void ADamagedFileHasEverybodySignInAnew()
    {
        File.WriteAllText(FilePath, "{\"sessions\":[{}]}");

        Assert.Empty(Open().Of(ada));
        Assert.Contains("everybody signs in anew", Assert.Single(complaints), StringComparison.Ordinal);
    }

    [Fact]
    public void AFolderThatCannotBeWrittenIsToldAndSessionsGoOn()
    {
        folder.CreateSubdirectory("sessions.json");
        var sessions = Open();

        Assert.NotNull(sessions.Use(sessions.Begin(ada, "a test", "here")));
        Assert.NotEmpty(complaints);
    }

    private Sessions Open() => new(FilePath, clock, (what, _) => complaints.Add(what));
}
