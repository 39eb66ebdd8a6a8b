using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace RackController.Page;

/// <summary>Signing in and out.</summary>
internal sealed class SignInRoutes(AccessParts access)
{
    /// <summary>Where somebody is taken who stopped without a name.</summary>
    public const string AfterStop = "/sign-in?stopped";

    private static readonly TimeSpan patience = TimeSpan.FromSeconds(2);

    /// <summary>Puts them on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/sign-in", OpenAsync).ForAnyone();
        routes.MapPost("/sign-in", SignInAsync).ForAnyone();
        routes.MapPost("/sign-out", SignOutAsync).ForPeople(Role.View);
    }

    private Task OpenAsync(HttpContext context) =>
        Visitor.Of(context).Role is null ? ShowAsync(context, StatusCodes.Status200OK, null) : Answer.SeeOther(context, "/");

    private async Task SignInAsync(HttpContext context)
    {
        if (await FormReading.ReadAsync(context).ConfigureAwait(false) is not { } form)
        {
            return;
        }

        var name = form["name"].ToString().Trim();
        if (access.Passwords.IsBusy)
        {
            await ShowAsync(context, StatusCodes.Status503ServiceUnavailable, "Many sign in just now. Try again in a moment.")
                .ConfigureAwait(false);
            return;
        }

        var from = AddressWords.Of(context);
        string[] keys = [KeyOf(name), $"from {AddressWords.Counted(context.Connection.RemoteIpAddress)}"];
        var attempt = access.Lockouts.Begin(keys);
        if (attempt.Wait > TimeSpan.Zero)
        {
            context.Response.Headers.RetryAfter = $"{Math.Ceiling(attempt.Wait.TotalSeconds):0}";
            await ShowAsync(context, StatusCodes.Status429TooManyRequests, WaitWords(attempt.Wait)).ConfigureAwait(false);
            return;
        }

        var person = access.People.Find(name);
        var password = form["password"].ToString();
        if (!await access.Passwords.FitsAsync(person, password, context.RequestAborted).ConfigureAwait(false))
        {
            RecordFailure(attempt, person, from);
            await ShowAsync(context, StatusCodes.Status401Unauthorized, "Name or password is wrong.").ConfigureAwait(false);
            return;
        }

        access.Lockouts.Succeeded(keys);
        await BeginAsync(context, person!, password, from).ConfigureAwait(false);
    }

    /// <summary>What tries for a name are counted by.</summary>
    public static string KeyOf(string name) => $"name {name[..Math.Min(name.Length, PasswordRules.MostNameLength)]}";

    /// <summary>Why somebody has to wait.</summary>
    public static string WaitWords(TimeSpan wait) =>
        $"Too many wrong passwords: wait {PageWords.CountDown(NodaTime.Duration.FromTimeSpan(wait))}. Stop works all the same.";

    private async Task BeginAsync(HttpContext context, Person person, string password, string from)
    {
        if (person.Password.IsOld)
        {
            var fresh = await access.Passwords.HashAsync(password, context.RequestAborted).ConfigureAwait(false);
            if (access.People.Renew(person, fresh) is { } renewed)
            {
                access.Rack.Complain("a password could not be hashed anew", new IOException(renewed));
            }
        }

        // Never the session that the browser came with: somebody else may know that one.
        if (SessionCookie.Read(context.Request) is { } old)
        {
            var digest = Secret.Digest(old);
            access.Sessions.End(session => session.Digest == digest);
        }

        var device = DeviceWords.Of(context.Request.Headers.UserAgent.ToString());
        SessionCookie.Give(context, access.Sessions.Begin(person, device, from));
        access.Rack.Record($"{person.Name} signed in", $"name and password were right, from {from} with {device}");
        await Answer.SeeOther(context, "/").ConfigureAwait(false);
    }

    // A name that nobody has may be a password in the wrong field, so it is put down nowhere.
    private void RecordFailure(Attempt attempt, Person? person, string from)
    {
        var who = person is null ? "an unknown name" : person.Name;
        if (attempt.Number == 1)
        {
            access.Rack.Record($"sign-in failed for {who}", $"name or password was wrong, from {from}");
        }
        else if (attempt.Number >= Lockouts.Free)
        {
            access.Rack.Record($"sign-in has to wait for {who}", $"{attempt.Number} in a row were wrong, the last from {from}");
        }
    }

    private Task SignOutAsync(HttpContext context)
    {
        var visitor = Visitor.Of(context);
        if (visitor.Session is { } session)
        {
            access.Sessions.End(each => each.Digest == session.Digest);
            access.Rack.Record($"{visitor.Name} signed out", $"they asked for it, with {session.Device}");
        }

        SessionCookie.TakeBack(context);
        return Answer.SeeOther(context, "/sign-in");
    }

    private async Task ShowAsync(HttpContext context, int code, string? complaint)
    {
        context.Response.StatusCode = code;
        var fault = access.People.Fault is { } unreadable ? $"Nobody can sign in: {unreadable}."
            : await FaultAsync(context).ConfigureAwait(false);
        var page = new SignInPage(
            new FrameView("", "Sign in", "", IsLive: false), complaint, fault, context.Request.Query.ContainsKey("stopped"));
        await Answer.WithAsync(context, Slices.SignIn.Create(page)).ConfigureAwait(false);
    }

    private async Task<string?> FaultAsync(HttpContext context)
    {
        using var until = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted);
        until.CancelAfter(patience);
        try
        {
            var status = await access.Rack.LookAsync(until.Token).ConfigureAwait(false);
            return status.Health.Fault is null ? null : "The rack is not driven as it should be: see its log.";
        }
        catch (OperationCanceledException) when (!context.RequestAborted.IsCancellationRequested)
        {
            return "The controller does not answer: see its log.";
        }
    }
}
