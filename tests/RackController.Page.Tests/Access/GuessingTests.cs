using System.Net;

namespace RackController.Page.Tests;

/// <summary>Somebody guesses passwords.</summary>
public sealed class GuessingTests
{
    [Fact]
    public async Task AfterFiveInARowEvenTheRightOneWaitsWhileSessionsAndStopGoOn()
    {
        await using var served = await Household.ServedAsync();
        using var ada = await Household.GuestAsync(served, Household.Ada);
        using var thief = new Guest(served.Address);
        for (var i = 0; i < Lockouts.Free; i++)
        {
            Assert.Equal(HttpStatusCode.Unauthorized, await thief.SignInAsync(Household.Ada, $"a guess of mine {i}"));
        }

        using var answer = await thief.Client.PostAsync("/sign-in", Guest.Form(("name", "ada"), ("password", Household.Password)));
        Assert.Equal(HttpStatusCode.TooManyRequests, answer.StatusCode);
        Assert.InRange(answer.Headers.RetryAfter!.Delta!.Value, TimeSpan.FromSeconds(1), TimeSpan.FromMinutes(1));
        Assert.Equal(HttpStatusCode.OK, await ada.GetAsync("/"));
        using var stop = await thief.Client.PostAsync("/stop", null);
        await served.SeeAsync(status => status.Asked[0].IsStopped);
    }

    [Fact]
    public async Task AnUnknownNameIsAnsweredLikeAWrongPassword()
    {
        await using var served = await Household.ServedAsync();
        using var guest = new Guest(served.Address);

        Assert.Equal(await AnswerAsync(guest, Household.Ada), await AnswerAsync(guest, "zebedee"));
    }

    [Fact]
    public async Task FailuresAreOnRecordOnceAndNeverWithTheNameThatWasTyped()
    {
        await using var served = await Household.ServedAsync();
        using var guest = new Guest(served.Address);
        for (var i = 0; i < Lockouts.Free + 3; i++)
        {
            await guest.SignInAsync("my password by mistake", "x");
        }

        await served.EndAsync();
        var log = string.Concat(Directory.GetFiles(served.State.Path, "*.log", SearchOption.AllDirectories).Select(File.ReadAllText));
        Assert.Equal(1, Count(log, "sign-in failed for an unknown name"));
        Assert.Equal(1, Count(log, "sign-in has to wait for an unknown name"));
        Assert.DoesNotContain("my password", log, StringComparison.Ordinal);
    }

    private static int Count(string text, string part) => text.Split(part).Length - 1;

    private static async Task<(HttpStatusCode, string)> AnswerAsync(Guest guest, string name)
    {
        using var answer = await guest.Client.PostAsync("/sign-in", Guest.Form(("name", name), ("password", "not the password")));
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync());
    }
}
