using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace RackController.Page;

/// <summary>What somebody may change of their own: the password, and where they are signed in.</summary>
internal sealed class AccountRoutes(AccessParts access)
{
    /// <summary>Puts them on the map.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/account", context => ShowAsync(context, null)).ForPeople(Role.View);
        routes.MapPost("/account/password", SetPasswordAsync).ForPeople(Role.View);
        routes.MapPost("/account/end-session", EndSessionAsync).ForPeople(Role.View);
        routes.MapPost("/account/end-all-sessions", EndAllAsync).ForPeople(Role.View);
    }

    private Task ShowAsync(HttpContext context, string? complaint)
    {
        if (Visitor.Of(context) is not { Person: { } person, Session: { } session })
        {
            return Answer.SeeOther(context, "/people");
        }

        if (complaint is not null)
        {
            context.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
        }

        var zone = access.Rack.Site.Zone;
        var sessions = access.Sessions.Of(person).Select(each => new SessionView(
            each.Digest, each.Device, each.From, PageWords.Date(each.UsedAt, zone), each.Digest == session.Digest));
        var page = new AccountPage(
            new FrameView(access.Rack.Site.Name, "Account", "Account", IsLive: false), person.Name, RoleWords.Of(person.Role), complaint,
            [.. sessions]);
        return Answer.WithAsync(context, Slices.Account.Create(page));
    }

    private async Task SetPasswordAsync(HttpContext context)
    {
        if (await FormReading.ReadAsync(context).ConfigureAwait(false) is not { } form
            || Visitor.Of(context) is not { Person: { } person } visitor)
        {
            return;
        }

        var (fresh, again) = (form["password"].ToString(), form["again"].ToString());
        var complaint = fresh != again ? "The new password was typed in two ways."
            : PasswordRules.Complaint(fresh, person.Name, access.Rack.Site.Name);
        complaint ??= await CurrentComplaintAsync(context, person, form["current"].ToString()).ConfigureAwait(false);
        complaint ??= access.People.SetPassword(
            person.Name, await access.Passwords.HashAsync(fresh, context.RequestAborted).ConfigureAwait(false));
        if (complaint is not null || access.People.Find(person.Name) is not { } changed)
        {
            await ShowAsync(context, complaint).ConfigureAwait(false);
            return;
        }

        access.Rack.Record($"password of {person.Name} changed", "they changed it; their other sessions are over");
        access.Sessions.End(session => session.Digest == visitor.Session!.Digest);
        var session = visitor.Session!;
        SessionCookie.Give(context, access.Sessions.Begin(changed, session.Device, session.From));
        await Answer.SeeOther(context, "/account").ConfigureAwait(false);
    }

    // Whoever finds an open browser does not get the account with it.
    private async Task<string?> CurrentComplaintAsync(HttpContext context, Person person, string current)
    {
        var attempt = access.Lockouts.Begin(SignInRoutes.KeyOf(person.Name));
        if (attempt.Wait > TimeSpan.Zero)
        {
            return SignInRoutes.WaitWords(attempt.Wait);
        }

        if (!await access.Passwords.FitsAsync(person, current, context.RequestAborted).ConfigureAwait(false))
        {
            return "The present password is wrong.";
        }

        access.Lockouts.Succeeded(SignInRoutes.KeyOf(person.Name));
        return null;
    }

    private async Task EndSessionAsync(HttpContext context)
    {
        if (await FormReading.ReadAsync(context).ConfigureAwait(false) is not { } form || Visitor.Of(context) is not { Person: { } person })
        {
            return;
        }

        var key = form["session"].ToString();
        access.Sessions.End(session => session.Digest == key && person.IsCalled(session.Person));
        access.Rack.Record($"{person.Name} signed out", "they asked for it, from elsewhere");
        await Answer.SeeOther(context, "/account").ConfigureAwait(false);
    }

    private Task EndAllAsync(HttpContext context)
    {
        if (Visitor.Of(context).Person is { } person)
        {
            access.Sessions.End(session => person.IsCalled(session.Person));
            access.Rack.Record($"{person.Name} signed out everywhere", "they asked for it");
        }

        SessionCookie.TakeBack(context);
        return Answer.SeeOther(context, "/sign-in");
    }
}
